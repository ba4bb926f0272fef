// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

/// What the stop list tells of an instrument's tablets in words. Threading: [any].
class RailWords
{
public:
    /// "in hand, proposed"; "blank"; "cannot sound"; empty for a plain tablet.
    static juce::String note (const StopTablet& stop, bool isInHand, bool canSound);

    /// What the bus of a stop is called under the heading of its division: without the first word, where that is the
    /// division's: "reeds" of "Upper reeds" under "Upper manual". Empty for a stop on no bus.
    static juce::String shortBus (const StopTablet& stop);

    /// Division, bus with mixing resistor, what it leaves when retired, and what can be done with it.
    static juce::String lesson (const Instrument& instrument, const StopTablet& stop);
    static juce::String lesson (const Coupler& coupler);
    static juce::String lesson (const Outlet& outlet);

    /// "Tremulant", or "Rotary: fast".
    static juce::String switchName (const Outlet& outlet);
};

} // namespace stopwright
