// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/MixingCell.h"

#include "Bench/PartSymbol.h"
#include "Units/Engineering.h"

namespace stopwright
{

MixingCell::MixingCell (BenchSession& session) : PartCell (session, "mixing")
{
    setTooltip (
        "Mixing resistor: from the card's output to the bus where stops meet. It belongs to the tablet, not to the "
        "card, and stands in the instrument's document.");
}

juce::String MixingCell::nameText() const
{
    return "to the bus";
}

juce::String MixingCell::valueText() const
{
    const auto* const stop = session_.document().stopInHand();
    return stop != nullptr ? juce::String::fromUTF8 (formatEngineering (stop->mixingOhms, Quantity::resistance).c_str())
                           : juce::String();
}

juce::String MixingCell::nodesText() const
{
    const auto* const stop = session_.document().stopInHand();
    return stop != nullptr ? juce::String::fromUTF8 (stop->bus.c_str()) : juce::String();
}

void MixingCell::paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    PartSymbol::draw (graphics, Resistor {}, square.reduced (square.getWidth() * 0.2f), 1.5f);
}

} // namespace stopwright
