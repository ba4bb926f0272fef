// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RestCell.h"

#include "Bench/CardKnob.h"
#include "Bench/GlossaryTerms.h"

#include <utility>

namespace stopwright
{

namespace
{

constexpr juce::juce_wchar minusSign = 0x2212;

} // namespace

RestCell::RestCell (BenchSession& session, RestReading reading)
    : PartCell (session, reading.name),
      reading_ (std::move (reading))
{
    setTooltip ("At rest: with every key up. Volts are against common; amps are into a diode's anode or a transistor's "
                "collector, and out of a supply. Measure the real thing before you trust it.");
    if (findPart (session.card(), reading_.name) == nullptr)
        setTerm (*this, "node");
}

void RestCell::show (const RestReading& reading)
{
    if (reading == reading_)
        return;
    reading_ = reading;
    setDescription (valueText() + " " + nodesText());
    repaint();
}

juce::String RestCell::nameText() const
{
    return juce::String::fromUTF8 (reading_.name.c_str());
}

juce::String RestCell::valueText() const
{
    return juce::String::fromUTF8 (reading_.number.c_str()).replaceCharacter ('-', minusSign);
}

juce::String RestCell::nodesText() const
{
    return juce::String::fromUTF8 (reading_.words.c_str());
}

void RestCell::paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square)
{
    if (findPart (session_.card(), reading_.name) != nullptr)
        PartCell::paintSymbol (graphics, square);
    else
        graphics.fillEllipse (square.withSizeKeepingCentre (square.getWidth() * 0.12f, square.getWidth() * 0.12f));
}

} // namespace stopwright
