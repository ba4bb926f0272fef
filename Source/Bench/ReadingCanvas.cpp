// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingCanvas.h"

#include "Bench/BenchLook.h"
#include "Bench/DrawingPainter.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// How many spots an arrow key goes on; 0 for other keys.
int stepOf (const juce::KeyPress& key, int columnLength)
{
    if (key == juce::KeyPress::leftKey)
        return -columnLength;
    if (key == juce::KeyPress::rightKey)
        return columnLength;
    if (columnLength > 1 && key == juce::KeyPress::upKey)
        return -1;
    if (columnLength > 1 && key == juce::KeyPress::downKey)
        return 1;
    return 0;
}

} // namespace

ReadingCanvas::ReadingCanvas()
{
    setWantsKeyboardFocus (true);
}

void ReadingCanvas::show (ReadingPicture picture)
{
    picture_ = std::move (picture);
    ++shownCount_;
    sentence_.clear();
    if (chosen_ >= static_cast<int> (picture_.spots.size()))
        chosen_ = -1;
    repaint();
}

void ReadingCanvas::showSentence (const juce::String& sentence)
{
    picture_ = {};
    sentence_ = sentence;
    chosen_ = -1;
    repaint();
}

void ReadingCanvas::choose (int spot)
{
    const int wanted = spot >= 0 && spot < static_cast<int> (picture_.spots.size()) ? spot : -1;
    if (std::exchange (chosen_, wanted) == wanted)
        return;
    if (onSpot)
        onSpot();
    repaint();
}

void ReadingCanvas::mouseMove (const juce::MouseEvent& event)
{
    const auto spot = spotAt (picture_, { event.position.x, event.position.y });
    choose (spot ? static_cast<int> (*spot) : -1);
}

void ReadingCanvas::mouseExit (const juce::MouseEvent&)
{
    choose (-1);
}

bool ReadingCanvas::keyPressed (const juce::KeyPress& key)
{
    const int count = static_cast<int> (picture_.spots.size());
    if (count == 0)
        return false;
    const bool isHome = key == juce::KeyPress::homeKey;
    if (isHome || key == juce::KeyPress::endKey)
    {
        choose (isHome ? 0 : count - 1);
        return true;
    }
    const int step = stepOf (key, static_cast<int> (picture_.columnLength));
    if (step == 0)
        return false;
    const int next = chosen_ < 0 ? 0 : chosen_ + step;
    if (next >= 0 && next < count)
        choose (next);
    return true;
}

void ReadingCanvas::focusGained (FocusChangeType)
{
    repaint();
}

void ReadingCanvas::focusLost (FocusChangeType)
{
    choose (-1);
    repaint();
}

void ReadingCanvas::paint (juce::Graphics& graphics)
{
    if (sentence_.isNotEmpty())
        paintSentence (graphics);
    else
        DrawingPainter (graphics, BenchLook::paletteOf (*this), this).paint (picture_.drawing);
    paintChosen (graphics);
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

void ReadingCanvas::paintSentence (juce::Graphics& graphics)
{
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    auto area = getLocalBounds().reduced (Lettering::px (10.0f));
    const auto lines = Lettering::wrapped (Lettering::body(), sentence_, area.getWidth());
    const int row = Lettering::px (21.0f);
    area = area.withSizeKeepingCentre (area.getWidth(), std::min (area.getHeight(), row * lines.size()));
    for (const auto& line : lines)
        if (area.getHeight() >= row)
            Lettering::draw (graphics, *this, line, Lettering::body(), area.removeFromTop (row),
                             juce::Justification::centred);
}

void ReadingCanvas::paintChosen (juce::Graphics& graphics)
{
    if (chosen_ < 0)
        return;
    const auto& spot = picture_.spots[static_cast<std::size_t> (chosen_)];
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    if (! spot.mark)
    {
        const auto box = juce::Rectangle<double> (spot.box.x, spot.box.y, spot.box.width, spot.box.height).toFloat();
        graphics.drawRect (box.expanded (1.0f), 1.5f);
        return;
    }
    // A dashed line through the point, and a small wedge that points down at it.
    const auto x = static_cast<float> (spot.mark->x);
    const auto y = static_cast<float> (spot.mark->y);
    const float dashes[] = { 3.0f, 3.0f };
    graphics.drawDashedLine ({ x, static_cast<float> (spot.box.y), x, static_cast<float> (spot.box.bottom()) }, dashes,
                             2, 1.0f);
    juce::Path wedge;
    wedge.addTriangle (x - 4.5f, y - 10.0f, x + 4.5f, y - 10.0f, x, y - 3.0f);
    graphics.fillPath (wedge);
}

} // namespace stopwright
