// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KnobCell.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/InstrumentKnob.h"
#include "Bench/Lettering.h"
#include "Bench/PartSymbol.h"
#include "Bench/PartTerms.h"
#include "Bench/PartWords.h"
#include "Bench/RingDrawing.h"
#include "Units/Error.h"

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

KnobCell::KnobCell (BenchSession& session, CardKnob knob, const Series& series)
    : PartCell (session, knob.name),
      knob_ (std::move (knob)),
      series_ (series)
{
    setWantsKeyboardFocus (true);
    setRepaintsOnMouseActivity (false);
    refresh();
}

bool KnobCell::isPresent() const
{
    if (knob_.isInInstrument())
        return session_.document().instrument && hasKnob (*session_.document().instrument, knob_);
    return knob_.place == CardKnob::Place::tapLevel ? findTap (session_.card(), knob_.name) != nullptr
                                                    : findPart (session_.card(), knob_.name) != nullptr;
}

double KnobCell::savedValue() const
{
    try
    {
        return session_.savedValue (knob_);
    }
    catch (const Error&)
    {
        return value(); // the saved card lacks the part: there is nothing to go back to
    }
}

void KnobCell::refresh()
{
    if (! isPresent())
        return;
    setTitle (PartWords::title (knob_) + ", " + PartWords::number (knob_.kind, knob_.place));
    setDescription (juce::String::fromUTF8 (scale().longTextOf (value()).c_str()));
    setTooltip (PartWords::lesson (session_.card(), knob_) + " " + PartWords::handling (knob_.place));
    setTerm (*this, knobTerm (session_.card(), knob_));
    repaint();
}

juce::String KnobCell::nameText() const
{
    if (knob_.place == CardKnob::Place::mixing)
        return "to the bus";
    if (knob_.isInInstrument())
        return PartWords::number (knob_.kind, knob_.place);
    return PartWords::title (knob_);
}

juce::String KnobCell::valueText() const
{
    return editor_.isOpen() ? juce::String() : juce::String::fromUTF8 (scale().textOf (value()).c_str());
}

juce::String KnobCell::nodesText() const
{
    if (knob_.place == CardKnob::Place::tapLevel)
        return PartWords::tapLine (*findTap (session_.card(), knob_.name));
    if (const auto* const stop = session_.document().stopInHand();
        stop != nullptr && knob_.place == CardKnob::Place::mixing)
        return juce::String::fromUTF8 (stop->bus.c_str());
    if (knob_.isInInstrument())
        return {};
    if (knob_.kind == KnobKind::windingOhms)
        return "winding";
    if (knob_.kind == KnobKind::gainBandwidthHz)
        return "gain-bandwidth";
    return PartCell::nodesText();
}

void KnobCell::paintRing (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    const auto knobScale = scale();
    const double saved = savedValue();
    drawRing (graphics, BenchLook::paletteOf (*this), square,
              { knobScale.markAngles(), knobScale.angleOf (value()), knobScale.angleOf (saved), saved != value(),
                isHovered_ || isDragging_, isOnSchematic() && ! hasKeyboardFocus (true) });
}

void KnobCell::paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto inner = square.reduced (square.getWidth() * 0.22f);
    if (knob_.place == CardKnob::Place::tapLevel)
        PartSymbol::draw (graphics, colours, findTap (session_.card(), knob_.name)->wave, inner, 1.4f);
    else if (knob_.place == CardKnob::Place::tremulantRate || knob_.place == CardKnob::Place::tremulantDepth)
        PartSymbol::drawSwing (graphics, colours, inner, knob_.place == CardKnob::Place::tremulantRate ? 2 : 1, 1.4f);
    else if (knob_.kind == KnobKind::windingOhms || knob_.place == CardKnob::Place::mixing)
        PartSymbol::draw (graphics, colours, Resistor {}, inner, 1.4f);
    else
        PartSymbol::draw (graphics, colours, findPart (session_.card(), knob_.name)->value, inner, 1.4f);
}

void KnobCell::set (double value, const std::string& mergeKey)
{
    session_.attempt ([&] { session_.turn (knob_, value, mergeKey); });
}

void KnobCell::step (int steps, const std::string& mergeKey)
{
    set (scale().stepped (value(), steps), mergeKey);
}

void KnobCell::move (double amount, const std::string& mergeKey)
{
    set (scale().moved (value(), amount), mergeKey);
}

void KnobCell::returnToSaved()
{
    set (savedValue(), {});
}

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
    else if (juce::CharacterFunctions::isDigit (key.getTextCharacter()) || key.getTextCharacter() == '.')
        beginTyping (juce::String::charToString (key.getTextCharacter()));
    else
        return false;
    return true;
}

void KnobCell::resized()
{
    editor_.setArea (valueArea().expanded (Lettering::px (2.0f), 0));
}

void KnobCell::beginTyping (const juce::String& start)
{
    const auto present = juce::String::fromUTF8 (scale().textOf (value()).c_str());
    const auto closed = [this]
    {
        session_.say ({});
        repaint();
    };
    editor_.open (*this, valueArea().expanded (Lettering::px (2.0f), 0),
                  { "Value of " + nameText(), start.isEmpty() ? present : start, start.isEmpty(),
                    [this] (const juce::String& text) { return takeText (text); }, closed });
    repaint();
}

bool KnobCell::takeText (const juce::String& text)
{
    return session_.attempt ([&] { session_.turn (knob_, scale().parse (text.trim().toStdString())); });
}

} // namespace stopwright
