// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailWords.h"

#include "Bench/WideText.h"
#include "Units/Engineering.h"

namespace stopwright
{

namespace
{

juce::String octaveWords (int octaves)
{
    return octaves == 0 ? "" : octaves > 0 ? " an octave up" : " an octave down";
}

} // namespace

juce::String RailWords::note (const StopTablet& stop, bool isInHand, bool canSound)
{
    juce::StringArray words;
    if (isInHand)
        words.add ("in hand");
    if (stop.proposed)
        words.add ("proposed");
    if (stop.cardFile.empty())
        words.add ("blank");
    else if (! canSound)
        words.add ("cannot sound");
    return words.joinIntoString (", ");
}

juce::String RailWords::shortBus (const StopTablet& stop)
{
    const auto firstWord = [] (const juce::String& words) { return words.upToFirstOccurrenceOf (" ", false, false); };
    const auto bus = fromUtf8 (stop.bus);
    const auto rest = bus.fromFirstOccurrenceOf (" ", false, false).trim();
    return rest.isNotEmpty() && firstWord (bus) == firstWord (fromUtf8 (stop.division)) ? rest : bus;
}

juce::String RailWords::lesson (const Instrument& instrument, const StopTablet& stop)
{
    auto text = fromUtf8 (stop.name) + ", " + fromUtf8 (stop.division) + ". ";
    if (stop.cardFile.empty())
        return text + "A blank tablet: it has no card yet.";
    if (! instrument.mixingBuses.empty())
    {
        text += stop.bus.empty()
                    ? juce::String ("On no bus. ")
                    : "Through " + fromUtf8 (formatEngineering (stop.mixingOhms, Quantity::resistance)) + " to the bus "
                          + fromUtf8 (stop.bus) + (stop.polarity < 0 ? ", inverted. " : ". ");
        text += stop.whenRetired == WhenRetired::grounded
                    ? "Retired, its resistor goes to common, so that the others nearly keep their level. "
                    : "Retired, its resistor hangs free, and the others grow louder. ";
    }
    return text + "Click: draw or retire. Arrow at the end (right arrow key): take it in hand.";
}

juce::String RailWords::lesson (const Coupler& coupler)
{
    const auto keys = "the keys of " + fromUtf8 (coupler.from);
    if (coupler.from == coupler.to)
        return "Coupler: " + keys + " play themselves" + octaveWords (coupler.octaves) + " as well.";
    return "Coupler: " + keys + " play " + fromUtf8 (coupler.to) + octaveWords (coupler.octaves) + " as well.";
}

juce::String RailWords::lesson (const Outlet& outlet)
{
    if (outlet.kind == OutletKind::tremulant)
        return "Tremulant of the outlet " + fromUtf8 (outlet.name) + ": its level swings "
               + juce::String (outlet.tremulant.rateHz, 1) + " times a second.";
    return "Rotary speaker of the outlet " + fromUtf8 (outlet.name) + ": fast when switched on, slow when not.";
}

juce::String RailWords::switchName (const Outlet& outlet)
{
    return outlet.kind == OutletKind::rotary ? fromUtf8 (outlet.name) + " fast" : fromUtf8 (outlet.name);
}

} // namespace stopwright
