// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/SourceWords.h"

#include "Circuit/FindingWords.h"
#include "Command/NumberText.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"

#include <cmath>

namespace stopwright
{

namespace
{

std::string hertz (double value)
{
    return formatForReading (value, Quantity::frequency, 4);
}

std::string number (double value)
{
    return fixedNumber (value, value == std::round (value) ? 0 : 4);
}

std::string causeSentence (const LackReason& reason, const Tap& tap)
{
    const auto feet = tap.footage.text() + " ft";
    switch (reason.cause)
    {
        case LackCause::aboveHearing:
            return "it lies at " + hertz (reason.number) + ", above 20 kHz, and nobody will miss it";
        case LackCause::noGenerator:
            return "no generator sounds " + feet + " on this key: it would be " + hertz (reason.number);
        case LackCause::noMultiple:
            return feet + " sounds " + number (reason.number)
                   + " times the key's 8 ft pitch, and has multiples of that only";
        case LackCause::besideHarmonic:
            return feet + " is borrowed from the tempered scale and sounds at harmonic " + number (reason.number)
                   + ", beside it";
        case LackCause::brokenBack:
            return feet + " breaks back here and sounds " + number (reason.number) + " times the key's 8 ft pitch";
        case LackCause::halfWave:
            return "its half-waves are alike (half-wave symmetry), so it has no even harmonics and no filter can bring "
                   "one out";
        case LackCause::dutyError:
            return "a near-square of " + number (reason.number * 100.0)
                   + " % has even harmonics only by what its duty is off one half";
        case LackCause::pulseNull:
            return "the pulse has a null at every multiple of " + number (reason.number);
        case LackCause::nearPulseNull:
            return "it is near a null of the pulse, which lie at multiples of " + number (reason.number);
        case LackCause::missingRank:
            return "a staircase of " + std::to_string (tap.wave.ranks) + (tap.wave.ranks == 1 ? " rank" : " ranks")
                   + " lacks every multiple of " + number (reason.number);
        case LackCause::rankOfNoWeight:
            return "it comes from rank " + number (reason.number) + " alone, and that has weight 0";
        case LackCause::rankWithoutGenerator:
            return "the rank that carries it would run at " + hertz (reason.number)
                   + ", and there is no such generator";
        case LackCause::rankBrokenBack:
            return "the rank that carries it would run at " + hertz (reason.number) + ", and breaks back to lower ones";
        case LackCause::outphased:
            return "outphasing by " + number (reason.number) + " leaves the even harmonics "
                   + (reason.number == 0.5
                          ? "out"
                          : fixedNumber (toDecibels (std::abs (1.0 - 2.0 * reason.number)), 2) + " dB re a sawtooth's");
        case LackCause::fallsOff:
            return "the wave has it, but falls off that far";
        case LackCause::cancelled:
            break;
    }
    return "it has it, but the other taps cancel it";
}

} // namespace

std::string reasonWords (const LackReason& reason, const Card& card)
{
    const Tap& tap = card.taps[reason.tap];
    return partWords (tap.name) + ", " + std::string (waveName (tap.wave.kind)) + ", " + tap.footage.text()
           + " ft: " + causeSentence (reason, tap);
}

std::string supplyWords (const PartialSupply& supply, const KeyedBus& bus, double lowestDb)
{
    const auto has = partWords (bus.name) + " (" + std::string (waveName (bus.wave.kind)) + ", " + bus.footage.text()
                     + " ft) has it as its harmonic " + std::to_string (supply.partial) + " at "
                     + fixedNumber (supply.levelDb, 2) + " dB";
    if (! supply.ratio && supply.levelDb >= lowestDb)
        return has + ": no mixture reaches the wanted level, but tapped alone it is within the tolerance";
    if (! supply.ratio)
        return has + ", but no mixture reaches the wanted level: the filter has to do the rest";
    return has + ": mix it in at " + fixedNumber (toDecibels (*supply.ratio), 2)
           + " dB re the present taps, by a resistor " + csvNumber (std::round (1e4 / *supply.ratio) / 1e4)
           + " times theirs";
}

std::string stateWords (const WantedPartial& wanted)
{
    switch (wanted.state)
    {
        case WishState::present:
            break;
        case WishState::tooWeak:
            return "only at " + fixedNumber (wanted.sourceDb, 2) + " dB";
        case WishState::absent:
            return "absent";
        case WishState::aboveHearing:
            return "above 20 kHz";
    }
    return "at " + fixedNumber (wanted.sourceDb, 2) + " dB";
}

} // namespace stopwright
