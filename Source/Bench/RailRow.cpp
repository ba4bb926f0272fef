// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailRow.h"

#include "Bench/BenchLook.h"
#include "Bench/BringIntoSight.h"
#include "Bench/ClipButton.h"
#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

namespace
{

constexpr float lineHeight = 24.0f;
constexpr float noteHeight = 17.0f;
constexpr float signWidth = 34.0f;
constexpr float markWidth = 22.0f;
constexpr float busGap = 6.0f;
constexpr float leastBusWidth = 36.0f;

} // namespace

RailRow::RailRow (Face face, Actions actions) : face_ (std::move (face)), actions_ (std::move (actions))
{
    describe();
}

void RailRow::setFace (const Face& face)
{
    if (face == face_)
        return;
    face_ = face;
    describe();
    repaint();
}

void RailRow::describe()
{
    setTitle (face_.name);
    const auto state = face_.sign == Sign::lamp ? juce::String() : juce::String (face_.isOn ? "drawn" : "retired");
    juce::StringArray words { state, face_.note, face_.bus.isEmpty() ? juce::String() : "bus " + face_.bus };
    words.removeEmptyStrings();
    setDescription (words.joinIntoString (", "));
}

int RailRow::height() const
{
    return Lettering::px (lineHeight) + (face_.note.isEmpty() ? 0 : Lettering::px (noteHeight));
}

juce::Rectangle<int> RailRow::markArea() const
{
    return getLocalBounds().removeFromRight (Lettering::px (markWidth)).withHeight (Lettering::px (lineHeight));
}

void RailRow::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    if (isMouseOver (true) && face_.isUsable)
    {
        graphics.setColour (colours.grid);
        graphics.fillRect (getLocalBounds());
    }

    auto area = getLocalBounds();
    auto line = area.removeFromTop (Lettering::px (lineHeight));
    const auto sign = line.removeFromLeft (Lettering::px (signWidth)).toFloat().reduced (2.0f);
    if (face_.sign == Sign::contact)
        paintContact (graphics, sign);
    else
        ClipButton::drawLamp (graphics, *this, sign, face_.isOn);

    line.removeFromLeft (Lettering::px (4.0f));
    if (face_.canBeTaken)
        line.removeFromRight (Lettering::px (markWidth));
    const auto font = face_.sign == Sign::contact && face_.isOn ? Lettering::small().boldened() : Lettering::small();
    graphics.setColour (face_.isUsable ? colours.ink : colours.faintInk);
    Lettering::draw (graphics, *this, face_.name, font, line);
    paintBus (graphics, line, face_.name, font);

    area.setLeft (line.getX());
    graphics.setColour (face_.sign == Sign::lamp && face_.isOn ? colours.notice : colours.faintInk);
    if (face_.note.isNotEmpty())
        Lettering::draw (graphics, *this, face_.note, Lettering::small(),
                         area.removeFromTop (Lettering::px (noteHeight - 2.0f)));
    if (face_.canBeTaken)
        paintMark (graphics);
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

/// At the right, as far as there is room behind what stands in the line; a few letters of it would tell nothing.
void RailRow::paintBus (juce::Graphics& graphics,
                        juce::Rectangle<int> line,
                        const juce::String& before,
                        const juce::Font& font) const
{
    line.removeFromLeft (Lettering::widthOf (font, before) + Lettering::px (busGap));
    const auto text = Lettering::fitted (Lettering::small(), face_.shortBus, line.getWidth());
    if (text.isEmpty() || (text != face_.shortBus && line.getWidth() < Lettering::px (leastBusWidth)))
        return;
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    Lettering::draw (graphics, *this, text, Lettering::small(), line, juce::Justification::centredRight);
}

/// A make contact on a plate, which is filled when the contact is closed.
void RailRow::paintContact (juce::Graphics& graphics, juce::Rectangle<float> area) const
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto plate = area.reduced (0.5f, 2.0f);
    const auto y = plate.getCentreY();
    const float left = plate.getX() + 0.26f * plate.getWidth();
    const float right = plate.getX() + 0.74f * plate.getWidth();
    if (face_.isOn)
    {
        graphics.setColour (colours.result);
        graphics.fillRect (plate);
        graphics.setColour (colours.sheet);
    }
    else
    {
        graphics.setColour (face_.isUsable ? colours.faintInk : colours.hairline);
        if (face_.isUsable)
            graphics.drawRect (plate, 1.0f);
        else
        {
            // A blank: dashed outline, no contact.
            const float dashes[] = { 3.0f, 3.0f };
            juce::Path outline;
            outline.addRectangle (plate);
            juce::PathStrokeType (1.0f).createDashedStroke (outline, outline, dashes, 2);
            graphics.fillPath (outline);
            return;
        }
    }
    const float dot = 1.8f * Lettering::scale();
    graphics.drawLine (plate.getX() + 3.0f, y, left, y, 1.6f);
    graphics.drawLine (right, y, plate.getRight() - 3.0f, y, 1.6f);
    graphics.fillEllipse (juce::Rectangle<float> (2.0f * dot, 2.0f * dot).withCentre ({ left, y }));
    graphics.fillEllipse (juce::Rectangle<float> (2.0f * dot, 2.0f * dot).withCentre ({ right, y }));
    graphics.drawLine (left, y, right, face_.isOn ? y : plate.getY() + 0.16f * plate.getHeight(),
                       face_.isOn ? 2.2f : 1.6f);
}

/// An arrow towards the parts: filled for the stop whose parts are shown.
void RailRow::paintMark (juce::Graphics& graphics) const
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto area =
        markArea().toFloat().withSizeKeepingCentre (7.0f * Lettering::scale(), 11.0f * Lettering::scale());
    juce::Path arrow;
    arrow.startNewSubPath (area.getTopLeft());
    arrow.lineTo (area.getRight(), area.getCentreY());
    arrow.lineTo (area.getBottomLeft());
    graphics.setColour (face_.isInHand ? colours.ink : colours.faintInk);
    if (face_.isInHand)
    {
        arrow.closeSubPath();
        graphics.fillPath (arrow);
    }
    else
    {
        graphics.strokePath (arrow, juce::PathStrokeType (1.3f));
    }
}

void RailRow::mouseDown (const juce::MouseEvent& event)
{
    if (actions_.focused)
        actions_.focused();
    grabKeyboardFocus();
    const auto& action =
        face_.canBeTaken && markArea().contains (event.getPosition()) ? actions_.takeInHand : actions_.use;
    if (action)
        action();
}

void RailRow::mouseEnter (const juce::MouseEvent&)
{
    repaint();
}

void RailRow::mouseExit (const juce::MouseEvent&)
{
    repaint();
}

bool RailRow::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
    {
        if (actions_.move)
            actions_.move (key == juce::KeyPress::upKey ? -1 : 1);
        return true;
    }
    if (key == juce::KeyPress::spaceKey || key == juce::KeyPress::returnKey)
    {
        if (actions_.use)
            actions_.use();
        return true;
    }
    if (key == juce::KeyPress::rightKey && face_.canBeTaken)
    {
        if (actions_.takeInHand)
            actions_.takeInHand();
        return true;
    }
    return false;
}

void RailRow::focusGained (FocusChangeType cause)
{
    if (actions_.focused)
        actions_.focused();
    // Under the mouse nothing may move: the next click would meet another row.
    if (cause != focusChangedByMouseClick)
        bringIntoSight (*this, getLocalBounds());
    repaint();
}

void RailRow::focusLost (FocusChangeType)
{
    repaint();
}

} // namespace stopwright
