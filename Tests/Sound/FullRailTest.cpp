// SPDX-License-Identifier: GPL-3.0-or-later
//
// The bars of one card hold with the whole rail around it: 24 stops on four buses, three divisions, all drawn.
#include "Sound/ClickMeasure.h"
#include "Sound/InstrumentVoice.h"
#include "Sound/TestCards.h"
#include "Sound/TestVoice.h"
#include "Support/Spectrum.h"
#include "Support/Tolerances.h"
#include "Units/Decibels.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace stopwright::test
{

namespace
{

constexpr double rateHz = 48000.0;
constexpr int upper = 0;

/// Buses of every kind, each with a preamp that has its coupling, bandwidth and rails but does not reach them, to one
/// outlet. The mutation is left out: borrowed generators do not fit the harmonics of the key.
TestOrgan fullRail()
{
    TestOrgan organ = emptyOrgan ({});
    auto& instrument = organ.instrument;
    instrument.mixingBuses.clear();
    instrument.preamps.clear();
    organ.cards.ofStages.assign (4, {});
    for (int index = 0; index < 4; ++index)
    {
        MixingBus bus;
        bus.name = std::to_string (index);
        bus.kind = index < 2 ? BusKind::passive : BusKind::virtualEarth;
        bus.loadFarads = index == 1 ? 1e-9 : 0.0;
        if (index == 3)
            bus.gainBandwidthHz = 1e6;
        bus.rails = SupplyRails {};
        instrument.mixingBuses.push_back (bus);
        PreampStage stage;
        stage.name = "Gain";
        stage.coupling = Coupling {};
        stage.gain = index < 2 ? -4.0 : 1.0;
        stage.gainBandwidthHz = 1e6;
        stage.rails = SupplyRails {};
        instrument.preamps.push_back ({ bus.name, bus.name, "Main", { stage } });
    }
    const std::array<std::string, 9> presets { "Krummhorn8", "Clarinet8",     "Oboe8",   "Trumpet8",   "VoxHumana8",
                                               "Diapason8",  "StoppedFlute8", "String8", "FrenchHorn8" };
    for (std::size_t index = 0; index < 24; ++index)
        organ.add ("Stop " + std::to_string (index), presetCard (presets[index % presets.size()]),
                   instrument.divisions[index % 3].name, std::to_string (index % 4));
    return organ;
}

/// The full rail with the near-sine on the upper manual instead of its own stops, on a bus with others.
TestOrgan nearSineInFullRail (const std::string& bus)
{
    auto organ = fullRail();
    for (auto& stop : organ.instrument.stops)
        if (stop.division == "Upper")
            stop.division = "Lower";
    organ.add ("Sine", nearSineCard(), "Upper", bus);
    return organ;
}

/// Residue above 6 kHz re the peak, dB, of moving one control while A3 sounds; the worst of several instants.
double residueDb (const TestOrgan& organ,
                  const std::function<std::optional<int> (const InstrumentVoice&)>& control,
                  double from,
                  double to)
{
    double worst = -400.0;
    for (int phase = 0; phase < 3; ++phase)
    {
        InstrumentVoice voice (organ.instrument, organ.cards, StreamSpec {});
        voice.setControl (*control (voice), from);
        voice.key (upper, 57, true, 0);
        renderVoice (voice, 24000 + 73 * phase);
        auto samples = renderVoice (voice, 4096);
        voice.setControl (*control (voice), to);
        const auto after = renderVoice (voice, 4096);
        samples.insert (samples.end(), after.begin(), after.end());
        worst = std::max (worst, residueAboveSixKilohertz (samples, rateHz));
    }
    return worst;
}

} // namespace

// A keys of equal temperament at 440 Hz repeat within the two seconds looked at, so every bin that is no multiple of the
// key's half pitch is something that should not be there.
TEST (FullRail, WhatIsNoHarmonicIsFarBelow)
{
    const auto organ = fullRail();
    for (const int key : { 45, 69, 93 })
    {
        InstrumentVoice voice (organ.instrument, organ.cards, StreamSpec {});
        voice.key (upper, key, true, 0);
        renderVoice (voice, 48000);
        const auto bins = amplitudes (renderVoice (voice, 96000));
        EXPECT_EQ (voice.takeClips(), 0U);
        const auto pitchBin = static_cast<std::size_t> (std::lround (2.0 * equalTemperedHz (key)));
        double worst = 0.0;
        std::size_t worstBin = 0;
        for (std::size_t bin = 40; bin <= 40000; ++bin)
            if (bin % (pitchBin / 2) != 0 && bins[bin] > worst)
            {
                worst = bins[bin];
                worstBin = bin;
            }
        const double fundamental = std::max (squareVolts, bins[pitchBin]);
        std::printf ("full rail %s: worst %.1f dB at %.1f Hz, fundamental %.3f V\n", keyName (key).c_str(),
                     toDecibels (worst / fundamental), static_cast<double> (worstBin) / 2.0, bins[pitchBin]);
        EXPECT_LT (toDecibels (worst / fundamental), tolerance::aliasDb) << keyName (key);
    }
}

TEST (FullRail, ATurnedKnobLeavesNothingAboveSixKilohertz)
{
    for (const std::string bus : { "0", "1", "2", "3" })
    {
        const double residue = residueDb (
            nearSineInFullRail (bus),
            [] (const InstrumentVoice& voice) {
                return voice.findKnob ("Sine", { "R", KnobKind::value });
            },
            100e3, 1e3);
        std::printf ("full rail, bus %s: R 100k -> 1k leaves %.1f dB\n", bus.c_str(), residue);
        EXPECT_LT (residue, tolerance::knobResidueDb) << bus;
    }
}

TEST (FullRail, ATabletLeavesNoClick)
{
    for (const std::string bus : { "0", "3" })
        for (const double to : { 0.0, 1.0 })
        {
            const double residue = residueDb (
                nearSineInFullRail (bus), [] (const InstrumentVoice& voice) { return voice.findDraw ("Sine"); },
                1.0 - to, to);
            std::printf ("full rail, bus %s: %s leaves %.1f dB\n", bus.c_str(), to > 0.5 ? "drawing" : "retiring",
                         residue);
            EXPECT_LT (residue, tolerance::knobResidueDb) << bus;
        }
}

// A mixing resistor moves the level itself, with nothing behind it to smooth the steps of its ramp.
TEST (FullRail, AMixingResistorTurnsWithoutAClick)
{
    for (const double ohms : { 56e3, 100e3, 4.7e3, 470.0 })
    {
        const double residue = residueDb (
            nearSineInFullRail ("0"), [] (const InstrumentVoice& voice) { return voice.findMixingKnob ("Sine"); }, 47e3,
            ohms);
        std::printf ("full rail: mixing resistor 47k -> %g leaves %.1f dB\n", ohms, residue);
        EXPECT_LT (residue, tolerance::knobResidueDb) << ohms;
    }
}

// A retired stop that is grounded still stands on the bus through its resistor, and the others hear that turned.
TEST (FullRail, TheMixingResistorOfARetiredStopTurnsWithoutAClick)
{
    auto organ = nearSineInFullRail ("0");
    organ.tablet ("Stop 0").drawn = false;
    organ.tablet ("Stop 0").whenRetired = WhenRetired::grounded;
    const double residue = residueDb (
        organ, [] (const InstrumentVoice& voice) { return voice.findMixingKnob ("Stop 0"); }, 47e3, 470.0);
    std::printf ("full rail: mixing resistor of a retired stop 47k -> 470 leaves %.1f dB\n", residue);
    EXPECT_LT (residue, tolerance::knobResidueDb);
}

} // namespace stopwright::test
