// SPDX-License-Identifier: GPL-3.0-or-later
//
// Preamps and outlets of any values under any signal: what comes out is a number, and the audio thread does not allocate,
// free or lock.
#include "Sound/OutletStage.h"
#include "Sound/PreampChain.h"
#include "Sound/TestCards.h"
#include "Sound/TestTones.h"
#include "Support/AllocationGuard.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace stopwright
{
namespace
{

using namespace test;

constexpr std::array rates { 44100.0, 48000.0, 96000.0, 192000.0 };

/// Counts over all blocks of a test.
struct Watch
{
    std::size_t breaches = 0; ///< allocations, releases and locks
    std::size_t badSamples = 0;

    template <typename Work>
    void run (Work work)
    {
        const AllocationGuard guard;
        work();
        breaches += guard.allocations() + guard.releases() + guard.locks();
    }

    void judge (std::span<const double> samples)
    {
        for (const double sample : samples)
            badSamples += std::isfinite (sample) ? 0U : 1U;
    }

    void expectClean() const
    {
        EXPECT_EQ (badSamples, 0U);
        if (AllocationGuard::isAvailable)
        {
            EXPECT_EQ (breaches, 0U);
        }
    }
};

/// Silence, noise of any size up to the end of what a network may run away to, or a lone spike.
std::vector<double> anySignal (Random& random)
{
    const auto length = static_cast<std::size_t> (random.integer (0, 700));
    auto samples = noise (length, random.chance (0.2) ? 0.0 : random.logUniform (1e-20, 1e12), random);
    if (length > 0 && random.chance (0.2))
        samples[static_cast<std::size_t> (random.integer (0, static_cast<int> (length) - 1))] = 1e100;
    return samples;
}

PreampStage anyStage (Random& random)
{
    PreampStage stage;
    stage.name = "Any";
    stage.kind = static_cast<StageKind> (random.integer (0, 2));
    stage.gain = random.uniform (-1.0, 1.0) * random.logUniform (1e-3, 1e5);
    if (random.chance (0.5))
        stage.coupling = Coupling { random.logUniform (1e-12, 1e-2), random.logUniform (1.0, 1e8) };
    if (random.chance (0.5))
        stage.gainBandwidthHz = random.logUniform (1.0, 1e9);
    if (random.chance (0.7))
        stage.rails = SupplyRails { -random.logUniform (1e-3, 1e3), random.logUniform (1e-3, 1e3) };
    stage.emitterAmps = random.logUniform (1e-6, 1.0);
    stage.emitterOhms = random.logUniform (1.0, 1e7);
    stage.loadOhms = random.logUniform (1.0, 1e7);
    return stage;
}

TEST (OutletMisuse, AnyPreampUnderAnySignal)
{
    Random random (101);
    Watch watch;
    const Card card = plainCard();
    for (int trial = 0; trial < 150; ++trial)
    {
        Preamp preamp;
        std::vector<std::reference_wrapper<const Card>> cards;
        for (int stage = random.integer (0, 4); stage > 0; --stage)
            preamp.stages.push_back (anyStage (random));
        for (const auto& stage : preamp.stages)
            if (stage.kind == StageKind::circuit)
                cards.push_back (std::cref (card));
        const double rateHz = random.chance (0.5) ? 176400.0 : 192000.0;
        PreampChain chain (preamp, rateHz, cards);
        PreampChain other (preamp, rateHz, cards);
        for (int block = 0; block < 20; ++block)
        {
            auto volts = anySignal (random);
            watch.run ([&] { chain.process (volts); });
            watch.judge (volts);
        }
        watch.run (
            [&]
            {
                if (other.isLike (chain))
                    other.copyStateFrom (chain);
                chain.clearClips();
                chain.reset();
            });
        std::vector<double> silence (100, 0.0);
        chain.process (silence);
        EXPECT_EQ (silence, std::vector<double> (100, 0.0));
    }
    watch.expectClean();
}

Outlet anyOutlet (Random& random)
{
    Outlet outlet;
    outlet.kind = static_cast<OutletKind> (random.integer (0, 2));
    outlet.tremulant = { .rateHz = random.uniform (-1.0, 100.0), .depth = random.uniform (-1.0, 2.0) };
    outlet.rotary.crossoverHz = random.logUniform (10.0, 15000.0);
    for (RotorSettings* const rotor : { &outlet.rotary.horn, &outlet.rotary.drum })
        *rotor = { .slowRpm = random.uniform (-100.0, 100.0),
                   .fastRpm = random.uniform (-900.0, 900.0),
                   .radiusMetres = random.uniform (0.0, 0.95),
                   .riseSeconds = random.uniform (-0.1, 3.0),
                   .fallSeconds = random.uniform (-0.1, 3.0) };
    outlet.isOn = random.chance (0.5);
    outlet.swell = random.chance (0.7);
    outlet.swellFloorDb = random.uniform (-400.0, 10.0);
    return outlet;
}

TEST (OutletMisuse, AnyOutletUnderAnySignal)
{
    Random random (102);
    Watch watch;
    for (int trial = 0; trial < 150; ++trial)
    {
        const double rateHz = rates[static_cast<std::size_t> (random.integer (0, 3))];
        const Outlet outlet = anyOutlet (random);
        OutletStage stage (outlet, rateHz);
        OutletStage other (outlet, rateHz);
        for (int block = 0; block < 30; ++block)
        {
            auto samples = anySignal (random);
            const double position =
                random.chance (0.1) ? std::numeric_limits<double>::infinity() : random.uniform (-1, 2);
            const bool isOn = random.chance (0.5);
            const TremulantSettings tremulant { .rateHz = random.uniform (-1.0, 100.0),
                                                .depth = random.uniform (-1.0, 2.0) };
            watch.run (
                [&]
                {
                    stage.setSwell (position);
                    stage.setOn (isOn);
                    stage.setTremulant (tremulant);
                    stage.process (samples);
                });
            watch.judge (samples);
        }
        watch.run (
            [&]
            {
                if (other.isLike (stage))
                    other.copyStateFrom (stage);
                stage.reset();
            });
        std::vector<double> silence (100, 0.0);
        stage.process (silence);
        EXPECT_EQ (silence, std::vector<double> (100, 0.0));
    }
    watch.expectClean();
}

} // namespace
} // namespace stopwright
