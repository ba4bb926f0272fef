// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/SignalPathWords.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (SignalPathWords, OfABus)
{
    MixingBus bus;
    bus.name = "Mix";
    EXPECT_EQ (mixingBusWords (bus), "Mix: virtual earth, feedback 47.0 k\u03a9, ideal, no rails");
    bus.gainBandwidthHz = 1e6;
    bus.rails = SupplyRails { -5.5, 6.0 };
    EXPECT_EQ (mixingBusWords (bus),
               "Mix: virtual earth, feedback 47.0 k\u03a9, gain-bandwidth product 1.00 MHz, -5.5 to +6 V");
    bus.kind = BusKind::passive;
    EXPECT_EQ (mixingBusWords (bus), "Mix: passive, 100 k\u03a9 to common");
    bus.loadFarads = 1e-9;
    EXPECT_EQ (mixingBusWords (bus), "Mix: passive, 100 k\u03a9 and 1.00 nF to common");
}

TEST (SignalPathWords, OfAStage)
{
    PreampStage stage;
    stage.name = "Gain";
    stage.gain = -4.0;
    stage.coupling = Coupling();
    // Closed forms: 1 / (2 pi 47k 1u) = 3.39 Hz, 20 log10 4 = 12.04 dB.
    EXPECT_EQ (stageWords (stage),
               "Gain: amplifier, 1.00 \u00b5F into 47.0 k\u03a9 (3.39 Hz), gain -4 (12.0 dB), ideal, no rails");
    stage.kind = StageKind::circuit;
    stage.cardFile = "Tone.json";
    EXPECT_EQ (stageWords (stage), "Gain: circuit Tone.json, 1.00 \u00b5F into 47.0 k\u03a9 (3.39 Hz)");

    PreampStage follower;
    follower.name = "Driver";
    follower.kind = StageKind::follower;
    follower.loadOhms = 4700.0;
    // Closed form: 0.7 mA (10k parallel 4k7) = 2.24 V.
    EXPECT_EQ (stageWords (follower), "Driver: follower, 700 \u00b5A in 10.0 k\u03a9, drives 4.70 k\u03a9 and sinks to "
                                      "-2.24 V, no rails");
}

TEST (SignalPathWords, OfAnOutlet)
{
    Outlet outlet;
    outlet.name = "Out";
    EXPECT_EQ (outletWords (outlet), "Out: as it comes, swell down to -40 dB");
    outlet.swell = false;
    EXPECT_EQ (outletWords (outlet), "Out: as it comes, no swell");
    outlet.kind = OutletKind::tremulant;
    // Closed form: 20 log10 (1.3 / 0.7) = 5.38 dB.
    EXPECT_EQ (outletWords (outlet), "Out: tremulant of 6.00 Hz, depth 0.3 (5.38 dB from peak to peak), on, no swell");
    outlet.kind = OutletKind::rotary;
    outlet.isOn = false;
    EXPECT_EQ (outletWords (outlet),
               "Out: rotary speaker, crossover 800 Hz, horn 48 or 400 turns per minute, drum 40 or "
               "342 turns per minute, slow, no swell");
}

} // namespace stopwright
