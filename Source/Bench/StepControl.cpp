// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/StepControl.h"

#include "Bench/BenchLook.h"

namespace stopwright
{

namespace
{

/// What a key asks for; 0 when it is none of ours.
int stepsOf (const juce::KeyPress& key)
{
    const auto modifiers = key.getModifiers();
    if (modifiers.isCommandDown() || modifiers.isAltDown())
        return 0;
    const int code = key.getKeyCode();
    if (code == juce::KeyPress::upKey || code == juce::KeyPress::rightKey)
        return 1;
    if (code == juce::KeyPress::downKey || code == juce::KeyPress::leftKey)
        return -1;
    if (code == juce::KeyPress::pageUpKey)
        return StepControl::leapSteps;
    return code == juce::KeyPress::pageDownKey ? -StepControl::leapSteps : 0;
}

} // namespace

StepControl::StepControl()
{
    setWantsKeyboardFocus (true);
}

void StepControl::mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails& wheel)
{
    if (wheel.deltaY != 0.0f)
        step (wheel.deltaY > 0.0f ? 1 : -1);
}

bool StepControl::keyPressed (const juce::KeyPress& key)
{
    const int steps = stepsOf (key);
    if (steps != 0)
        step (steps);
    return steps != 0;
}

void StepControl::focusGained (FocusChangeType)
{
    repaint();
}

void StepControl::focusLost (FocusChangeType)
{
    repaint();
}

void StepControl::paintOverChildren (juce::Graphics& graphics)
{
    if (hasKeyboardFocus (false))
        BenchLook::drawFocusRing (graphics, *this, getLocalBounds().toFloat());
}

} // namespace stopwright
