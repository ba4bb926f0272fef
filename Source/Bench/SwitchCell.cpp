// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SwitchCell.h"

#include "Bench/BenchLook.h"
#include "Bench/CardKnob.h"
#include "Bench/PartSymbol.h"
#include "Bench/PartWords.h"

namespace stopwright
{

SwitchCell::SwitchCell (BenchSession& session, const std::string& name) : PartCell (session, name)
{
    setWantsKeyboardFocus (true);
    setTooltip (PartWords::switchLesson());
    refresh();
}

bool SwitchCell::isClosed() const
{
    const auto* part = findPart (session_.card(), partName());
    const auto* contact = part != nullptr ? std::get_if<Switch> (&part->value) : nullptr;
    return contact != nullptr && contact->closed;
}

juce::String SwitchCell::valueText() const
{
    return isClosed() ? "closed" : "open";
}

void SwitchCell::refresh()
{
    setDescription (valueText());
    PartCell::refresh();
}

void SwitchCell::toggle()
{
    session_.attempt ([this] { session_.setSwitch (partName(), ! isClosed()); });
}

void SwitchCell::mouseDown (const juce::MouseEvent&)
{
    grabKeyboardFocus();
    toggle();
}

bool SwitchCell::keyPressed (const juce::KeyPress& key)
{
    if (key != juce::KeyPress::spaceKey && key != juce::KeyPress::returnKey)
        return false;
    toggle();
    return true;
}

void SwitchCell::paintRing (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (isClosed() ? colours.result : colours.faintInk);
    graphics.drawRoundedRectangle (square.reduced (square.getWidth() * 0.1f), 4.0f, isClosed() ? 2.5f : 1.0f);
}

void SwitchCell::paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    PartSymbol::draw (graphics, BenchLook::paletteOf (*this), Switch { isClosed() },
                      square.reduced (square.getWidth() * 0.22f), 1.5f);
}

} // namespace stopwright
