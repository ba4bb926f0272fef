// SPDX-License-Identifier: GPL-3.0-or-later
//
// The plot of HarmonicPanel: ruling, bars, partial numbers.
#include "Bench/BenchLook.h"
#include "Bench/HarmonicPanel.h"
#include "Bench/Lettering.h"

#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr int rowHeight = 18;

/// Slanted lines over an area: the source is told apart by its hatching too, not by colour alone.
void hatch (juce::Graphics& graphics, juce::Rectangle<float> area, juce::Colour colour)
{
    const juce::Graphics::ScopedSaveState saved (graphics);
    graphics.reduceClipRegion (area.getSmallestIntegerContainer());
    graphics.setColour (colour);
    for (float x = area.getX() - area.getHeight(); x < area.getRight(); x += 5.0f)
        graphics.drawLine (x, area.getBottom(), x + area.getHeight(), area.getY(), 0.8f);
}

} // namespace

void HarmonicPanel::paintLegend (juce::Graphics& graphics, juce::Rectangle<int> area)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto font = Lettering::small();
    const auto swatch = [&] { return area.removeFromLeft (Lettering::px (14.0f)).toFloat().reduced (1.0f, 3.0f); };
    const auto entry = [&] (const juce::String& text)
    {
        area.removeFromLeft (Lettering::px (4.0f));
        graphics.setColour (colours.ink);
        const int width = Lettering::widthOf (font, text);
        Lettering::draw (graphics, *this, text, font, area.removeFromLeft (width));
        area.removeFromLeft (Lettering::px (12.0f));
    };

    const auto sourceBox = swatch();
    graphics.setColour (colours.source.withAlpha (0.55f));
    graphics.fillRect (sourceBox);
    hatch (graphics, sourceBox, colours.faintInk);
    entry ("source");

    graphics.setColour (colours.result);
    graphics.fillRect (swatch().reduced (3.0f, 0.0f));
    entry ("result");

    graphics.setColour (colours.ink);
    graphics.drawEllipse (swatch().withSizeKeepingCentre (7.0f, 7.0f), 1.3f);
    entry ("not in the source");

    const juce::String scaleNote ("dB re the strongest of each");
    if (Lettering::widthOf (font, scaleNote) <= area.getWidth())
        entry (scaleNote);
}

void HarmonicPanel::paintGrid (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto& plot = axis_.plot;
    const auto font = Lettering::small();
    const int row = Lettering::px (static_cast<float> (rowHeight));

    for (int level = 0; level >= static_cast<int> (HarmonicAxis::lowestDb); level -= 20)
    {
        const float y = axis_.yOf (level);
        graphics.setColour (level == 0 ? colours.hairline : colours.grid);
        graphics.drawHorizontalLine (juce::roundToInt (y), plot.getX(), plot.getRight());
        graphics.setColour (colours.faintInk);
        const auto text = level == 0 ? juce::String ("0 dB") : juce::String (level).replaceCharacter ('-', 0x2212);
        const int width = Lettering::px (40.0f);
        Lettering::draw (graphics, *this, text, font,
                         { juce::roundToInt (plot.getX()) - width - 2, juce::roundToInt (y) - row / 2, width, row },
                         juce::Justification::centredRight);
    }

    // The frequency row gives way on narrow sheets: a label is left out when the last one is too near.
    float lastRight = -1e6f;
    for (const int hertz : { 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000 })
    {
        if (hertz < axis_.lowestHz)
            continue;
        const float x = axis_.xOf (hertz);
        graphics.setColour (colours.grid);
        graphics.drawVerticalLine (juce::roundToInt (x), plot.getY(), plot.getBottom());
        const auto text = hertz >= 1000 ? juce::String (hertz / 1000) + "k" : juce::String (hertz);
        const float width = static_cast<float> (Lettering::widthOf (font, text));
        const float left = std::min (x - 0.5f * width, static_cast<float> (getWidth()) - width - 4.0f);
        if (left < lastRight + 6.0f)
            continue;
        lastRight = left + width;
        graphics.setColour (colours.faintInk);
        Lettering::draw (graphics, *this, text, font,
                         { juce::roundToInt (left), juce::roundToInt (plot.getBottom()) + row + 2,
                           static_cast<int> (width) + 1, row },
                         juce::Justification::centred);
    }
    graphics.setColour (colours.faintInk);
    Lettering::draw (
        graphics, *this, "Hz", font,
        { Lettering::px (10.0f), juce::roundToInt (plot.getBottom()) + row + 2, Lettering::px (26.0f), row });
    Lettering::draw (graphics, *this, "no.", font,
                     { Lettering::px (10.0f), juce::roundToInt (plot.getBottom()) + 3, Lettering::px (26.0f), row });
}

void HarmonicPanel::paintBars (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const float bottom = axis_.plot.getBottom();
    const float unit = Lettering::scale();
    float room = 20.0f; // to the next partial; the last one takes that of the one before

    for (std::size_t index = 0; index < picture_.bars.size(); ++index)
    {
        const auto& bar = picture_.bars[index];
        const float x = axis_.xOf (bar.frequencyHz);
        if (index + 1 < picture_.bars.size())
            room = axis_.xOf (picture_.bars[index + 1].frequencyHz) - x;
        const float width = juce::jlimit (1.5f, 18.0f * unit, room * 0.72f);

        if (bar.isAbsent)
        {
            if (room > 5.0f)
            {
                graphics.setColour (colours.ink);
                graphics.drawEllipse (juce::Rectangle<float> (6.0f, 6.0f).withCentre ({ x, bottom - 4.0f }), 1.2f);
            }
            continue;
        }
        const float sourceTop = axis_.yOf (bar.sourceDb);
        const juce::Rectangle<float> sourceBar (x - 0.5f * width, sourceTop, width, bottom - sourceTop);
        graphics.setColour (colours.source.withAlpha (0.55f));
        graphics.fillRect (sourceBar);
        if (width > 5.0f)
            hatch (graphics, sourceBar, colours.source);

        const float resultTop = axis_.yOf (bar.resultDb);
        graphics.setColour (colours.result);
        graphics.fillRect (
            juce::Rectangle<float> (x - 0.22f * width, resultTop, std::max (1.0f, 0.44f * width), bottom - resultTop));
    }
    graphics.setColour (colours.ink);
    graphics.fillRect (axis_.plot.getX(), bottom, axis_.plot.getWidth(), 1.0f);
}

void HarmonicPanel::paintPartialNumbers (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto font = Lettering::small();
    float lastRight = -1e6f;
    for (const auto& bar : picture_.bars)
    {
        const bool isWhole = std::abs (bar.harmonic - std::round (bar.harmonic)) < 1e-6;
        const auto text = isWhole ? juce::String (juce::roundToInt (bar.harmonic)) : juce::String (bar.harmonic, 1);
        const float width = static_cast<float> (Lettering::widthOf (font, text));
        const float left = axis_.xOf (bar.frequencyHz) - 0.5f * width;
        if (left < lastRight + 5.0f || left + width > static_cast<float> (getWidth()) - 4.0f)
            continue;
        lastRight = left + width;
        graphics.setColour (colours.ink);
        Lettering::draw (graphics, *this, text, font,
                         { juce::roundToInt (left), juce::roundToInt (axis_.plot.getBottom()) + 3,
                           static_cast<int> (width) + 1, Lettering::px (static_cast<float> (rowHeight)) },
                         juce::Justification::centred);
    }
}

void HarmonicPanel::paintChosen (juce::Graphics& graphics)
{
    const int index = chosen_ >= 0 ? chosen_ : picture_.strongest;
    if (index < 0)
        return;
    const auto& colours = BenchLook::paletteOf (*this);
    const auto& bar = picture_.bars[static_cast<std::size_t> (index)];
    const float x = axis_.xOf (bar.frequencyHz);
    graphics.setColour (colours.ink);
    if (chosen_ >= 0)
    {
        const float dashes[] = { 3.0f, 3.0f };
        graphics.drawDashedLine ({ x, axis_.plot.getY(), x, axis_.plot.getBottom() }, dashes, 2, 1.0f);
    }

    // A small downward wedge over the bar that the reading line speaks of.
    const float tip = axis_.yOf (bar.isAbsent ? HarmonicAxis::lowestDb : bar.resultDb) - 3.0f;
    juce::Path wedge;
    wedge.addTriangle (x - 4.5f, tip - 7.0f, x + 4.5f, tip - 7.0f, x, tip);
    graphics.fillPath (wedge);
}

} // namespace stopwright
