// SPDX-License-Identifier: GPL-3.0-or-later
//
// What KnobCell does with mouse and keys.
#include "Bench/InstrumentKnob.h"
#include "Bench/KnobCell.h"

#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float pixelsPerStep = 7.0f;
constexpr float pixelsPerDecade = 300.0f;
constexpr double finePerKey = 0.004; // of a decade: about 1 %
constexpr double finePerNotch = 0.004;
constexpr int leapSteps = 5;
constexpr juce::uint32 wheelPauseMs = 700; // a longer pause begins another step of the history

} // namespace

void KnobCell::mouseDown (const juce::MouseEvent& event)
{
    grabKeyboardFocus();
    if (! ringArea().contains (event.getPosition()))
        return;
    isDragging_ = true;
    dragLastY_ = event.position.y;
    dragRest_ = 0.0f;
    session_.beginGesture();
    repaint();
}

void KnobCell::mouseDrag (const juce::MouseEvent& event)
{
    if (! isDragging_)
        return;
    const float upward = dragLastY_ - event.position.y;
    dragLastY_ = event.position.y;

    if (event.mods.isShiftDown())
    {
        move (upward / pixelsPerDecade);
        return;
    }
    dragRest_ += upward / pixelsPerStep;
    const int steps = static_cast<int> (std::trunc (dragRest_));
    dragRest_ -= static_cast<float> (steps);
    if (steps != 0)
        step (steps);
}

void KnobCell::mouseUp (const juce::MouseEvent& event)
{
    if (std::exchange (isDragging_, false))
        session_.endGesture();
    else if (valueArea().contains (event.getPosition()) && event.mouseWasClicked())
        beginTyping();
    repaint();
}

void KnobCell::mouseDoubleClick (const juce::MouseEvent& event)
{
    if (ringArea().contains (event.getPosition()))
        returnToSaved();
}

void KnobCell::mouseMove (const juce::MouseEvent& event)
{
    const bool isOnRing = ringArea().contains (event.getPosition());
    setMouseCursor (isOnRing                                     ? juce::MouseCursor::UpDownResizeCursor
                    : valueArea().contains (event.getPosition()) ? juce::MouseCursor::IBeamCursor
                                                                 : juce::MouseCursor::NormalCursor);
    if (std::exchange (isHovered_, isOnRing) != isOnRing)
        repaint();
}

void KnobCell::mouseExit (const juce::MouseEvent&)
{
    isHovered_ = false;
    repaint();
}

std::string KnobCell::wheelMergeKey()
{
    const auto now = juce::Time::getMillisecondCounter();
    if (now - lastWheelTime_ > wheelPauseMs)
        ++wheelRun_;
    lastWheelTime_ = now;
    return nameInHistory (knob_) + "#" + std::to_string (static_cast<int> (knob_.kind)) + "#"
           + std::to_string (wheelRun_);
}

void KnobCell::mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel)
{
    // Beside the ring the wheel scrolls the sheet.
    if (! ringArea().contains (event.getPosition()) || isScrolling (event))
    {
        PartCell::mouseWheelMove (event, wheel);
        return;
    }

    // Some window systems turn the wheel sideways while Shift is held.
    const float travel = std::abs (wheel.deltaY) >= std::abs (wheel.deltaX) ? wheel.deltaY : wheel.deltaX;
    const float direction = (travel > 0.0f) != wheel.isReversed ? 1.0f : -1.0f;
    if (travel == 0.0f)
        return;

    wheelRest_ += wheel.isSmooth ? travel * 8.0f : direction;
    const int notches = static_cast<int> (std::trunc (wheelRest_));
    wheelRest_ -= static_cast<float> (notches);
    if (notches == 0)
        return;
    const auto mergeKey = wheelMergeKey();
    if (event.mods.isShiftDown())
        move (finePerNotch * notches, mergeKey);
    else
        step (notches, mergeKey);
}

bool KnobCell::keyPressed (const juce::KeyPress& key)
{
    if (key.getModifiers().isCommandDown() || key.getModifiers().isAltDown())
        return false;

    const auto code = key.getKeyCode();
    const bool isUp = code == juce::KeyPress::upKey || code == juce::KeyPress::rightKey;
    const bool isDown = code == juce::KeyPress::downKey || code == juce::KeyPress::leftKey;
    if (isUp || isDown)
    {
        const int direction = isUp ? 1 : -1;
        if (key.getModifiers().isShiftDown())
            move (finePerKey * direction);
        else
            step (direction);
    }
    else if (code == juce::KeyPress::pageUpKey || code == juce::KeyPress::pageDownKey)
        step (code == juce::KeyPress::pageUpKey ? leapSteps : -leapSteps);
    else if (code == juce::KeyPress::homeKey)
        returnToSaved();
    else if (code == juce::KeyPress::returnKey)
        beginTyping();
    else if (juce::String ("0123456789.-").containsChar (key.getTextCharacter()))
        beginTyping (juce::String::charToString (key.getTextCharacter()));
    else
        return false;
    return true;
}

} // namespace stopwright
