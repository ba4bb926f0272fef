// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/HeadroomRemarks.h"

#include "Organ/Spelling.h"
#include "Units/Engineering.h"
#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

std::string listed (const std::vector<std::string>& words)
{
    const std::vector<std::string_view> views (words.begin(), words.end());
    return listedWords (views, "and");
}

std::string keyWords (const std::vector<int>& keys)
{
    std::vector<std::string> names;
    names.reserve (keys.size());
    for (const int key : keys)
        names.push_back (keyName (key));
    return listed (names);
}

std::string reasonOf (const StopTablet& stop, Silence why)
{
    switch (why)
    {
        case Silence::blank:
            return "the tablet names no card";
        case Silence::onNoBus:
            return "it is on no mixing bus";
        case Silence::noKey:
            return "no key of " + quotedText (stop.division) + " sounds";
        case Silence::noGenerator:
            break;
    }
    return "no generator reaches its pitch at the keys that sound";
}

/// The silent stops of each reason: "Oboe 8" and "Quint 2 2/3".
std::vector<std::pair<std::string, std::string>> reasonsAndStops (const Instrument& instrument,
                                                                  const std::vector<SilentStop>& silent)
{
    std::vector<std::pair<std::string, std::vector<std::string>>> sorted;
    for (const SilentStop& one : silent)
    {
        const StopTablet& stop = instrument.stops[one.stop];
        const auto reason = reasonOf (stop, one.why);
        auto known = std::ranges::find (sorted, reason, [] (const auto& entry) { return entry.first; });
        if (known == sorted.end())
            known = sorted.insert (sorted.end(), { reason, {} });
        known->second.push_back (quotedText (stop.name));
    }
    std::vector<std::pair<std::string, std::string>> words;
    words.reserve (sorted.size());
    for (const auto& [reason, stops] : sorted)
        words.emplace_back (reason, listed (stops));
    return words;
}

void addKeyRemarks (const std::vector<HeldDivision>& divisions, std::vector<std::string>& remarks)
{
    for (const HeldDivision& division : divisions)
    {
        const auto name = quotedText (division.name);
        if (division.isWholeForWant)
            remarks.push_back ("None of the ten usual notes is on " + name + ", so every key of it is held.");
        else if (! division.leftAway.empty())
            remarks.push_back ("Left away on " + name
                               + ", whose compass does not have them: " + keyWords (division.leftAway) + ".");
    }
}

void addCouplerRemarks (const Instrument& instrument,
                        const std::vector<HeldDivision>& divisions,
                        std::vector<std::string>& remarks)
{
    for (const Coupler& coupler : instrument.couplers)
    {
        const auto from = std::ranges::find (divisions, coupler.from, &HeldDivision::name);
        if (coupler.drawn && (from == divisions.end() || from->keys.empty()))
            remarks.push_back ("The coupler " + quotedText (coupler.name) + " plays nothing, as no key of "
                               + quotedText (coupler.from) + " is held; hold them with --division.");
    }
}

bool isPlayed (const Instrument& instrument, const MixingBus& bus)
{
    return std::ranges::any_of (instrument.stops,
                                [&bus] (const StopTablet& stop) { return stop.drawn && stop.bus == bus.name; });
}

void addLoadRemarks (const Instrument& instrument, std::vector<std::string>& remarks)
{
    const auto ohms = [] (double value) { return formatForReading (value, Quantity::resistance); };
    for (const Preamp& preamp : instrument.preamps)
    {
        const auto bus = std::ranges::find (instrument.mixingBuses, preamp.bus, &MixingBus::name);
        if (bus == instrument.mixingBuses.end() || bus->kind != BusKind::passive || preamp.stages.empty()
            || ! isPlayed (instrument, *bus))
            continue;
        const PreampStage& first = preamp.stages.front();
        if (first.coupling && first.coupling->inputOhms < bus->loadOhms)
            remarks.push_back ("The bus " + quotedText (bus->name) + " is told too high: its load of "
                               + ohms (bus->loadOhms) + " cannot hold the input of " + quotedText (first.name) + ", "
                               + ohms (first.coupling->inputOhms) + "; state both in parallel as loadOhms.");
    }
}

} // namespace

std::string heldWords (const std::vector<HeldDivision>& divisions)
{
    std::vector<std::string> words;
    words.reserve (divisions.size());
    for (const HeldDivision& division : divisions)
    {
        const auto count = std::to_string (division.keys.size());
        const bool isWhole = division.isWholeAsWished || division.isWholeForWant;
        words.push_back ((isWhole ? "all " : "") + count + (division.keys.size() == 1 ? " key" : " keys") + " of "
                         + quotedText (division.name));
    }
    return listed (words) + " held";
}

std::vector<std::string> headroomRemarks (const Instrument& instrument,
                                          const std::vector<HeldDivision>& divisions,
                                          const std::vector<SilentStop>& silent)
{
    std::vector<std::string> remarks;
    addKeyRemarks (divisions, remarks);
    for (const auto& [reason, stops] : reasonsAndStops (instrument, silent))
        remarks.push_back (std::string ("Drawn but silent, as ").append (reason).append (": ").append (stops) += ".");
    addCouplerRemarks (instrument, divisions, remarks);
    addLoadRemarks (instrument, remarks);
    return remarks;
}

void requireAnySound (const Instrument& instrument, const std::vector<SilentStop>& silent)
{
    const bool isKeys = std::ranges::any_of (silent, [] (const SilentStop& one)
                                             { return one.why == Silence::noKey || one.why == Silence::noGenerator; });
    if (! isKeys || std::cmp_not_equal (silent.size(), std::ranges::count (instrument.stops, true, &StopTablet::drawn)))
        return;
    std::string why;
    for (const auto& [reason, stops] : reasonsAndStops (instrument, silent))
        why.append (why.empty() ? "" : ", ").append (stops).append (" because ").append (reason);
    throw Error ("No drawn stop would sound: " + why + "; hold other keys, or draw other stops with --stops.");
}

} // namespace stopwright
