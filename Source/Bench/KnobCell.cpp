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

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float leastTypingWidth = 130.0f; ///< a value with its unit, and some more while it is being typed

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

void KnobCell::resized()
{
    editor_.setArea (typingArea());
}

void KnobCell::moved()
{
    editor_.setArea (typingArea());
}

/// Where the line for typing lies in what the cell lies in: wider than many a value, and in sight.
juce::Rectangle<int> KnobCell::typingArea() const
{
    const auto* const parent = getParentComponent();
    const auto value = valueArea().expanded (Lettering::px (2.0f), 0) + getPosition();
    if (parent == nullptr)
        return value;
    auto seen = parent->getLocalBounds();
    if (const auto* const viewport = findParentComponentOfClass<juce::Viewport>())
        seen = seen.getIntersection (parent->getLocalArea (viewport->getViewedComponent(), viewport->getViewArea()));
    auto line = value.withWidth (std::max (value.getWidth(), Lettering::px (leastTypingWidth)));
    if (valueArea().getX() < symbolArea().getCentreX())
        line.setCentre (value.getCentre()); // over or under the ring, not beside it
    return line.constrainedWithin (seen);
}

void KnobCell::beginTyping (const juce::String& start)
{
    auto* const parent = getParentComponent();
    if (parent == nullptr)
        return;
    const auto present = juce::String::fromUTF8 (scale().textOf (value()).c_str());
    // Not in the cell, which would cut it off.
    editor_.open (*parent, typingArea(),
                  { "Value of " + nameText(), start.isEmpty() ? present : start, start.isEmpty(),
                    [this] (const juce::String& text) { return takeText (text); }, [this] { repaint(); },
                    [this] { grabKeyboardFocus(); } });
    repaint();
}

bool KnobCell::takeText (const juce::String& text)
{
    return session_.attempt ([&] { session_.turn (knob_, scale().parse (text.trim().toStdString())); });
}

} // namespace stopwright
