// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DrawingPainter.h"

#include "Bench/Lettering.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace stopwright
{

namespace
{

/// Height of DejaVu Sans from its lowest descender to its highest ascender, in ems: what JUCE calls a font's height.
/// Source: the hhea table of its font files, 1901 + 483 of 2048 units.
constexpr double heightOfEm = 1.164;

constexpr float hatchSpacing = 5.0f;
constexpr float hatchWidth = 0.8f;

juce::Path pathOf (const std::vector<DrawingPoint>& points, bool isClosed)
{
    juce::Path path;
    bool isBegun = false; // a path of one point calls itself empty
    for (const auto& point : points)
    {
        const juce::Point<float> place (static_cast<float> (point.x), static_cast<float> (point.y));
        if (std::exchange (isBegun, true))
            path.lineTo (place);
        else
            path.startNewSubPath (place);
    }
    if (isClosed)
        path.closeSubPath();
    return path;
}

/// The rectangle that four corners are, if they are one: it is filled several times faster than a path.
std::optional<juce::Rectangle<float>> rectangleOf (const std::vector<DrawingPoint>& points)
{
    if (points.size() != 4 || points[0].y != points[1].y || points[1].x != points[2].x || points[2].y != points[3].y
        || points[3].x != points[0].x)
        return {};
    return juce::Rectangle<double> ({ points[0].x, points[0].y }, { points[2].x, points[2].y }).toFloat();
}

/// Slanted lines cut off at the rectangle, all of which pass through the same raster of the drawing. Cut by arithmetic
/// they are many times faster than by a clip region.
juce::Path hatchingOf (juce::Rectangle<float> area)
{
    juce::Path path;
    const float last = area.getRight() + area.getBottom();
    for (float sum = std::ceil ((area.getX() + area.getY()) / hatchSpacing) * hatchSpacing; sum < last;
         sum += hatchSpacing)
    {
        const float top = std::max (area.getY(), sum - area.getRight());
        const float bottom = std::min (area.getBottom(), sum - area.getX());
        path.addLineSegment ({ sum - top, top, sum - bottom, bottom }, hatchWidth);
    }
    return path;
}

} // namespace

DrawingPainter::DrawingPainter (juce::Graphics& graphics, const Palette& palette, const juce::Component* owner)
    : graphics_ (graphics),
      palette_ (palette),
      owner_ (owner)
{}

juce::Colour DrawingPainter::colourOf (Ink ink, const Palette& palette, double strength)
{
    const std::array colours { palette.ink,    palette.faintInk, palette.hairline, palette.grid, palette.result,
                               palette.source, palette.target,   palette.notice,   palette.sheet };
    return palette.sheet.interpolatedWith (colours[static_cast<std::size_t> (ink)], static_cast<float> (strength));
}

void DrawingPainter::paint (const Drawing& drawing)
{
    for (const auto& area : drawing.areas)
        paint (area);
    for (const auto& line : drawing.lines)
        paint (line);
    for (const auto& text : drawing.texts)
        paint (text);
}

void DrawingPainter::paint (const DrawnArea& area)
{
    graphics_.setColour (colourOf (area.ink, palette_, area.strength));
    if (area.isHatched)
        hatch (area);
    else if (const auto rectangle = rectangleOf (area.points))
        graphics_.fillRect (*rectangle);
    else
        graphics_.fillPath (pathOf (area.points, true));
}

void DrawingPainter::hatch (const DrawnArea& area)
{
    if (const auto rectangle = rectangleOf (area.points))
    {
        graphics_.fillPath (hatchingOf (*rectangle));
        return;
    }
    const auto path = pathOf (area.points, true);
    const juce::Graphics::ScopedSaveState saved (graphics_);
    graphics_.reduceClipRegion (path);
    graphics_.fillPath (hatchingOf (path.getBounds()));
}

void DrawingPainter::paint (const DrawnLine& line)
{
    if (line.points.size() < 2)
        return;
    const auto width = static_cast<float> (line.width);
    graphics_.setColour (colourOf (line.ink, palette_));
    auto path = pathOf (line.points, line.isClosed);
    if (line.isDashed)
    {
        constexpr std::array dashes { 4.0f, 3.0f };
        juce::PathStrokeType (width).createDashedStroke (path, path, dashes.data(), static_cast<int> (dashes.size()));
        graphics_.fillPath (path);
        return;
    }
    const bool isPlain = line.points.size() == 2 && ! line.isClosed;
    if (isPlain)
        graphics_.drawLine ({ static_cast<float> (line.points[0].x), static_cast<float> (line.points[0].y),
                              static_cast<float> (line.points[1].x), static_cast<float> (line.points[1].y) },
                            width);
    else
        graphics_.strokePath (path, juce::PathStrokeType (width, juce::PathStrokeType::beveled));
}

void DrawingPainter::paint (const DrawnText& text)
{
    const juce::Font font ("DejaVu Sans", static_cast<float> (heightOfEm * text.size),
                           text.isBold ? juce::Font::bold : juce::Font::plain);
    const auto words = juce::String::fromUTF8 (text.text.c_str());
    const float width = font.getStringWidthFloat (words);
    const float shift = text.align == TextAlign::left ? 0.0f : text.align == TextAlign::centre ? 0.5f * width : width;
    const juce::Point<float> place (static_cast<float> (text.at.x) - shift, static_cast<float> (text.at.y));

    juce::GlyphArrangement glyphs;
    glyphs.addLineOfText (font, words, place.x, place.y);
    graphics_.setColour (colourOf (text.ink, palette_));
    glyphs.draw (graphics_);

    if (owner_ != nullptr && Lettering::observer && words.isNotEmpty())
    {
        const auto em = static_cast<float> (text.size);
        const juce::Rectangle<float> needed (place.x, place.y - 0.76f * em, width, 0.98f * em);
        Lettering::observer ({ owner_, words, owner_->getLocalBounds(), needed.toNearestInt() });
    }
}

juce::Image
    DrawingPainter::imageOf (const Drawing& drawing, const Palette& palette, double pixelsPerUnit, double margin)
{
    const auto pixels = [&] (double length)
    { return std::max (1, static_cast<int> (std::lround ((length + 2.0 * margin) * pixelsPerUnit))); };
    juce::Image image (juce::Image::RGB, pixels (drawing.width), pixels (drawing.height), true);
    juce::Graphics graphics (image);
    graphics.fillAll (palette.sheet);
    graphics.addTransform (juce::AffineTransform::translation (static_cast<float> (margin), static_cast<float> (margin))
                               .scaled (static_cast<float> (pixelsPerUnit)));
    DrawingPainter (graphics, palette).paint (drawing);
    return image;
}

} // namespace stopwright
