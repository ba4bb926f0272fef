// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LevelPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double stepDb = 1.0;
constexpr float captionWidth = 48.0f;
constexpr double meterFallDbPerFrame = 1.2; // at 30 frames a second: 36 dB a second
constexpr int limiterHoldFrames = 30;
constexpr double limiterShownAboveDb = 0.1;

juce::String signedDb (double levelDb)
{
    return juce::String (juce::roundToInt (levelDb)).replaceCharacter ('-', 0x2212);
}

} // namespace

LevelPanel::LevelPanel (Engine& engine) : engine_ (engine)
{
    setTitle ("Listening level");
    setTerm (*this, "listening level");
    addAndMakeVisible (heading_);
    setReference ({}, false);
    setLevelDb (engine.listeningLevelDb());
}

void LevelPanel::setReference (const juce::String& name, bool isStop)
{
    juce::String text ("Listening level: how loud the bench plays into the headphones, in dB re full scale (dBFS). ");
    if (name.isNotEmpty())
        text += "One C4 of " + name + (isStop ? " alone" : "")
                + ", as it was opened, comes out at the marker; more keys" + (isStop ? " and more stops" : "")
                + " are louder. ";
    setTooltip (text
                + "It does not alter the card. Start in the hatched range and raise it slowly; a limiter stands behind "
                  "it. Double-click: back to the start level.");
}

void LevelPanel::setLevelDb (double levelDb)
{
    engine_.setListeningLevelDb (levelDb);
    setDescription (signedDb (engine_.listeningLevelDb()) + " dBFS" + (isAboveSafe() ? ", above the safe start" : ""));
    repaint();
}

void LevelPanel::show (const Telemetry& telemetry)
{
    telemetry_ = telemetry;
    meterDb_ = std::max (telemetry.rmsFullScaleDb, meterDb_ - meterFallDbPerFrame);
    peakDb_ = std::max (toDecibels (telemetry.peakFullScale), peakDb_ - meterFallDbPerFrame);
    limiterFrames_ =
        telemetry.limiterReductionDb > limiterShownAboveDb ? limiterHoldFrames : std::max (0, limiterFrames_ - 1);
    repaint();
}

juce::String LevelPanel::limiterText() const
{
    if (telemetry_.silencedByFault)
        return "silenced: fault";
    if (limiterFrames_ > 0)
    {
        const int wholeDb = juce::roundToInt (telemetry_.limiterReductionDb);
        return wholeDb > 0 ? "limiting " + juce::String (wholeDb) + " dB" : juce::String ("limiting < 1 dB");
    }
    return "limiter idle";
}

juce::Rectangle<int> LevelPanel::headingRow() const
{
    return getLocalBounds().reduced (Lettering::px (14.0f), Lettering::px (8.0f)).removeFromTop (Lettering::px (24.0f));
}

juce::Rectangle<int> LevelPanel::scaleArea() const
{
    auto area = getLocalBounds().reduced (Lettering::px (14.0f), Lettering::px (8.0f));
    area.removeFromTop (Lettering::px (26.0f));
    area.removeFromLeft (Lettering::px (captionWidth));
    return area.withHeight (Lettering::px (40.0f)).withTrimmedRight (Lettering::px (10.0f));
}

bool LevelPanel::isAboveSafe() const
{
    return engine_.listeningLevelDb() > safeBelowDb;
}

void LevelPanel::resized()
{
    heading_.setBounds (headingRow().withWidth (heading_.widthWanted()));
}

float LevelPanel::xOf (double levelDb) const
{
    const auto area = scaleArea().toFloat();
    const double place = (std::clamp (levelDb, lowestDb, highestDb) - lowestDb) / (highestDb - lowestDb);
    return area.getX() + static_cast<float> (place) * area.getWidth();
}

double LevelPanel::levelAt (float x) const
{
    const auto area = scaleArea().toFloat();
    return lowestDb + (highestDb - lowestDb) * static_cast<double> ((x - area.getX()) / area.getWidth());
}

void LevelPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    const auto row = headingRow().withLeft (heading_.getRight() + Lettering::px (5.0f));
    graphics.setColour (isAboveSafe() ? colours.notice : colours.ink);
    const auto text = signedDb (engine_.listeningLevelDb()) + " dBFS";
    Lettering::draw (graphics, *this, text, Lettering::strong(),
                     row.withWidth (Lettering::widthOf (Lettering::strong(), text)));
    paintScale (graphics);
    paintMeter (graphics);
    paintLimiter (graphics);
}

void LevelPanel::paintScale (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto area = scaleArea();
    const float lineY = static_cast<float> (area.getY()) + 0.30f * static_cast<float> (area.getHeight());
    const int captionHeight = Lettering::px (16.0f);
    const auto caption =
        area.withX (Lettering::px (14.0f)).withWidth (Lettering::px (captionWidth)).withHeight (captionHeight);
    graphics.setColour (colours.faintInk);
    Lettering::draw (graphics, *this, "level", Lettering::small(),
                     caption.withY (juce::roundToInt (lineY) - captionHeight / 2));
    Lettering::draw (graphics, *this, "output", Lettering::small(), caption.withBottomY (area.getBottom()));

    graphics.setColour (colours.ink);
    graphics.fillRect (static_cast<float> (area.getX()), lineY,
                       xOf (Engine::highestListeningLevelDb) - static_cast<float> (area.getX()), 1.5f);
    paintSafeRange (graphics, lineY);
    paintMarker (graphics, lineY);
}

/// Safe to start: a hatched band that ends in a post, with its word.
void LevelPanel::paintSafeRange (juce::Graphics& graphics, float lineY)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto left = static_cast<float> (scaleArea().getX());
    const float unit = Lettering::scale();
    const juce::Rectangle<float> safe (left, lineY - 6.0f * unit, xOf (safeBelowDb) - left, 12.0f * unit);
    {
        const juce::Graphics::ScopedSaveState saved (graphics);
        graphics.reduceClipRegion (safe.getSmallestIntegerContainer());
        graphics.setColour (colours.source);
        for (float x = safe.getX() - safe.getHeight(); x < safe.getRight(); x += 6.0f * unit)
            graphics.drawLine (x, safe.getBottom(), x + safe.getHeight(), safe.getY(), 1.0f);
    }
    const juce::String word (isAboveSafe() ? "above safe start" : "safe to start");
    const int width = Lettering::widthOf (Lettering::small(), word) + 8;
    const auto wordArea = safe.toNearestInt().withSizeKeepingCentre (width, Lettering::px (16.0f));
    graphics.setColour (colours.sheet);
    graphics.fillRect (wordArea);
    graphics.setColour (isAboveSafe() ? colours.notice : colours.faintInk);
    Lettering::draw (graphics, *this, word, Lettering::small(), wordArea, juce::Justification::centred);
    graphics.fillRect (safe.getRight() - 1.0f, safe.getY() - 2.0f, 2.0f, safe.getHeight() + 4.0f);
}

void LevelPanel::paintMarker (juce::Graphics& graphics, float lineY)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const float x = xOf (engine_.listeningLevelDb());
    const float unit = Lettering::scale();
    const auto colour = isAboveSafe() ? colours.notice : colours.result;
    graphics.setColour (colour);
    if (isAboveSafe())
        graphics.fillRect (xOf (safeBelowDb), lineY - 1.5f, x - xOf (safeBelowDb), 4.5f);
    juce::Path marker;
    marker.addTriangle (x - 7.0f * unit, lineY - 11.0f * unit, x + 7.0f * unit, lineY - 11.0f * unit, x, lineY);
    graphics.fillPath (marker);
    graphics.setColour (colours.ink);
    graphics.strokePath (marker, juce::PathStrokeType (1.2f));
}

void LevelPanel::paintMeter (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto area = scaleArea();
    const auto meter = area.toFloat().withTrimmedTop (static_cast<float> (area.getHeight()) * 0.62f);
    graphics.setColour (colours.hairline);
    graphics.drawRect (meter, 1.0f);
    graphics.setColour (colours.result);
    graphics.fillRect (meter.reduced (2.0f).withRight (std::max (meter.getX() + 2.0f, xOf (meterDb_))));
    graphics.setColour (colours.ink);
    if (peakDb_ > lowestDb)
        graphics.fillRect (xOf (peakDb_) - 1.0f, meter.getY(), 2.0f, meter.getHeight());

    const auto font = Lettering::small();
    const int width = Lettering::px (34.0f);
    for (int level = static_cast<int> (lowestDb); level <= static_cast<int> (highestDb); level += 20)
    {
        graphics.setColour (colours.faintInk);
        graphics.drawVerticalLine (juce::roundToInt (xOf (level)), meter.getBottom(), meter.getBottom() + 4.0f);
        Lettering::draw (
            graphics, *this, signedDb (level), font,
            { juce::roundToInt (xOf (level)) - width / 2, area.getBottom() + 4, width, Lettering::px (16.0f) },
            juce::Justification::centred);
    }
}

void LevelPanel::paintLimiter (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const bool isOn = limiterFrames_ > 0 || telemetry_.silencedByFault;
    auto row = headingRow();
    const auto text = limiterText();
    const auto font = Lettering::small();
    const auto textArea = row.removeFromRight (
        std::max (Lettering::widthOf (font, "silenced: fault"), Lettering::widthOf (font, "limiting < 1 dB")));
    graphics.setColour (isOn ? colours.notice : colours.faintInk);
    Lettering::draw (graphics, *this, text, font, textArea);

    const float lampSize = 10.0f * Lettering::scale();
    const auto lamp = row.removeFromRight (Lettering::px (18.0f)).toFloat().withSizeKeepingCentre (lampSize, lampSize);
    if (isOn)
        graphics.fillEllipse (lamp);
    else
        graphics.drawEllipse (lamp, 1.3f);
}

void LevelPanel::mouseDown (const juce::MouseEvent& event)
{
    grabKeyboardFocus();
    const float markerX = xOf (engine_.listeningLevelDb());
    isDragging_ = std::abs (event.position.x - markerX) < 14.0f * Lettering::scale();
    grabOffset_ = markerX - event.position.x;

    // A click far away must not jump the level up: it goes one step there.
    if (! isDragging_ && scaleArea().expanded (8).contains (event.getPosition()))
        setLevelDb (engine_.listeningLevelDb() + (event.position.x > markerX ? stepDb : -stepDb));
}

void LevelPanel::mouseDrag (const juce::MouseEvent& event)
{
    if (isDragging_)
        setLevelDb (std::round (levelAt (event.position.x + grabOffset_)));
}

void LevelPanel::mouseDoubleClick (const juce::MouseEvent&)
{
    setLevelDb (std::min (engine_.listeningLevelDb(), Engine::startListeningLevelDb));
}

void LevelPanel::step (int steps)
{
    setLevelDb (engine_.listeningLevelDb() + steps * stepDb);
}

} // namespace stopwright
