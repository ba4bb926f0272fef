// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingWords.h"
#include "Organ/Alter.h"
#include "Organ/AsFoundFields.h"
#include "Organ/CardItems.h"
#include "Organ/DocumentGuard.h"
#include "Organ/KeptFields.h"
#include "Organ/NamedItem.h"
#include "Organ/RailEdit.h"
#include "Units/Error.h"

namespace stopwright
{

Card setTapSource (Card card, std::string_view tap, const WaveSource& source)
{
    auto& altered = tapNamed (card, tap);
    auto present = waveSourceOf (altered);
    if (alter (present, source, altered.asFound, &AsFoundTap::source))
    {
        takeWaveSource (altered, source);
        requireHeld (altered);
        dropEmptyAsFound (card, altered);
    }
    return card;
}

Card moveTapToKeyedBus (Card card, std::string_view tap, const Instrument& instrument, std::string_view keyedBus)
{
    const auto& bus = itemNamed (instrument.keyedBuses, "keyed bus", inThisInstrument, keyedBus);
    return setTapSource (std::move (card), tap, waveSourceOf (bus));
}

Card setTapPolarity (Card card, std::string_view tap, int polarity)
{
    auto& altered = tapNamed (card, tap);
    requirePolarity (tap, polarity);
    if (alter (altered.polarity, polarity, altered.asFound, &AsFoundTap::polarity))
        dropEmptyAsFound (card, altered);
    return card;
}

Card moveTapToNode (Card card, std::string_view tap, const std::string& node)
{
    auto& altered = tapNamed (card, tap);
    requireName (node);
    if (alter (altered.node, node, altered.asFound, &AsFoundTap::node))
        dropEmptyAsFound (card, altered);
    return card;
}

Card noteAlteration (Card card, std::string_view tap, const AlterationNote& note)
{
    auto& altered = tapNamed (card, tap);
    requireHeld (note);
    if (! altered.asFound)
        throw Error ("Tap " + partWords (altered.name) + " is as it was found, so there is nothing to note yet.");
    altered.asFound->note = note;
    return card;
}

} // namespace stopwright
