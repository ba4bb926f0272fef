// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TestPreamps.h"

#include "Sound/TestTones.h"
#include "Support/Spectrum.h"
#include "Units/Decibels.h"

#include <cmath>
#include <utility>

namespace stopwright::test
{

PreampStage amplifier (double gain)
{
    PreampStage stage;
    stage.name = "Amplifier";
    stage.gain = gain;
    return stage;
}

PreampStage follower()
{
    PreampStage stage;
    stage.name = "Follower";
    stage.kind = StageKind::follower;
    stage.emitterAmps = 0.7e-3;
    stage.emitterOhms = 10e3;
    stage.loadOhms = 4.7e3;
    return stage;
}

PreampStage circuit()
{
    PreampStage stage;
    stage.name = "Tone";
    stage.kind = StageKind::circuit;
    return stage;
}

Card toneCard()
{
    Card card;
    card.name = "Tone network";
    Tap tap;
    tap.name = "In";
    tap.node = "in";
    tap.sourceOhms = 4.7e3;
    card.taps = { tap };
    card.parts = { { .name = "R1", .nodes = { "in", "out" }, .value = Resistor { 10e3 } },
                   { .name = "C1", .nodes = { "out", "0" }, .value = Capacitor { .farads = 10e-9 } },
                   { .name = "R2", .nodes = { "out", "0" }, .value = Resistor { 100e3 } } };
    card.output = "out";
    return card;
}

Preamp preampOf (std::vector<PreampStage> stages)
{
    return { .name = "Main", .bus = "Bus", .outlet = "Outlet", .stages = std::move (stages) };
}

Preamp fullPreamp()
{
    auto first = amplifier (-4.7);
    first.coupling = Coupling { 100e-9, 47e3 };
    first.gainBandwidthHz = 1e6;
    first.rails = SupplyRails { -6.0, 5.0 };
    auto last = follower();
    last.coupling = Coupling { 1e-6, 100e3 };
    last.rails = SupplyRails {};
    return preampOf ({ first, circuit(), last });
}

std::vector<std::reference_wrapper<const Card>> listOf (const Card& card)
{
    return { std::cref (card) };
}

std::complex<double> responseOf (PreampChain& chain, long long cycles)
{
    auto samples = sine (10 * preampPeriod, cycles, preampPeriod, 1e-3);
    const auto in = bin (std::span (samples).first (preampPeriod), cycles);
    chain.process (samples);
    return bin (std::span (samples).last (preampPeriod), cycles) / in;
}

double decibelsOf (PreampChain& chain, double frequencyHz)
{
    return toDecibels (
        std::abs (responseOf (chain, static_cast<long long> (frequencyHz * preampPeriod / preampRateHz))));
}

} // namespace stopwright::test
