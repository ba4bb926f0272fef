// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/PreampChain.h"

#include "Sound/TestCards.h"
#include "Sound/TestPreamps.h"
#include "Sound/TestTones.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <limits>
#include <numbers>
#include <string>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = preampRateHz;
constexpr long long period = preampPeriod;

TEST (PreampChain, WithoutStagesIsAWire)
{
    PreampChain chain (preampOf ({}), rateHz);
    std::vector<double> volts { 1.0, -2.0, 3e9 };
    chain.process (volts);
    EXPECT_EQ (volts, (std::vector<double> { 1.0, -2.0, 3e9 }));
    EXPECT_EQ (chain.latencySamples(), 0);
    EXPECT_TRUE (chain.stageNames().empty());
}

TEST (PreampChain, LightsTheLampOfTheStageThatClips)
{
    const Card card = toneCard();
    PreampChain chain (fullPreamp(), rateHz, listOf (card));
    EXPECT_EQ (chain.stageNames(), (std::vector<std::string> { "Amplifier", "Tone", "Follower" }));
    auto volts = sine (19200, 40, 19200, 0.4); // 1.9 V behind the first stage
    chain.process (volts);
    EXPECT_FALSE (chain.clips (0) || chain.clips (1) || chain.clips (2));

    volts = sine (19200, 40, 19200, 0.9); // 4.2 V: enough for the follower only
    chain.process (volts);
    EXPECT_FALSE (chain.clips (0) || chain.clips (1));
    EXPECT_TRUE (chain.clips (2));

    volts = sine (19200, 40, 19200, 2.0);
    chain.process (volts);
    EXPECT_TRUE (chain.clips (0));
    chain.clearClips();
    EXPECT_FALSE (chain.clips (0) || chain.clips (1) || chain.clips (2));
}

TEST (PreampChain, IsLateByWholeSamples)
{
    auto stage = amplifier (1.0);
    stage.rails = SupplyRails {};
    PreampChain chain (preampOf ({ stage, amplifier (2.0), stage }), rateHz);
    const int late = chain.latencySamples();
    EXPECT_EQ (late, 2 * RailClipper ({}, rateHz).delaySamples());
    const double angle = 2.0 * std::numbers::pi * 100.0 / period;
    const auto expected = 2.0 * std::polar (1.0, -angle * late);
    EXPECT_LT (std::abs (responseOf (chain, 100) - expected), 1e-5);
}

TEST (PreampChain, DoesNotCareHowTheStreamIsCut)
{
    Random random (41);
    const Card card = toneCard();
    PreampChain whole (fullPreamp(), rateHz, listOf (card));
    PreampChain pieces (fullPreamp(), rateHz, listOf (card));
    const auto in = noise (20000, 3.0, random);
    EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit
    EXPECT_TRUE (whole.clips (0));
}

TEST (PreampChain, GoesOnFromAnotherOfTheSameMake)
{
    Random random (42);
    const Card card = toneCard();
    const auto in = noise (5000, 3.0, random);
    PreampChain first (fullPreamp(), rateHz, listOf (card));
    throughWhole (first, in);

    auto louder = fullPreamp();
    louder.stages[0].gain = -6.0;
    EXPECT_TRUE (PreampChain (louder, rateHz, listOf (card)).isLike (first));
    auto other = fullPreamp();
    other.stages[0].coupling.reset();
    EXPECT_FALSE (PreampChain (other, rateHz, listOf (card)).isLike (first));
    EXPECT_FALSE (PreampChain (fullPreamp(), 176400.0, listOf (card)).isLike (first));

    PreampChain second (fullPreamp(), rateHz, listOf (card));
    second.copyStateFrom (first);
    const auto next = throughWhole (first, in);
    const auto taken = throughWhole (second, in);
    // The circuit's first sample is a damped one: it differs by what the step makes of a fast edge. That fades with the
    // network, but for a rest on the coupling capacitor behind it, which holds for 0.1 s.
    for (std::size_t i = 0; i < next.size(); ++i)
        ASSERT_NEAR (taken[i], next[i], i < 2000 ? 0.05 : 1e-4) << i;
}

TEST (PreampChain, GoesOnToTheLastBitWithoutACircuit)
{
    Random random (44);
    auto preamp = fullPreamp();
    preamp.stages.erase (preamp.stages.begin() + 1);
    const auto in = noise (5000, 3.0, random);
    PreampChain first (preamp, rateHz);
    throughWhole (first, in);
    PreampChain second (preamp, rateHz);
    second.copyStateFrom (first);
    EXPECT_TRUE (second.clips (0));
    EXPECT_EQ (throughWhole (second, in), throughWhole (first, in));
}

TEST (PreampChain, ForgetsOnReset)
{
    Random random (43);
    const Card card = toneCard();
    auto in = noise (3000, 3.0, random);
    PreampChain chain (fullPreamp(), rateHz, listOf (card));
    const auto first = throughWhole (chain, in);
    EXPECT_NE (throughWhole (chain, in), first);
    chain.reset();
    EXPECT_EQ (throughWhole (chain, in), first);

    std::vector<double> bad { 1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity() };
    chain.process (bad);
    chain.reset();
    EXPECT_EQ (throughWhole (chain, in), first);
}

/// The sentence a preamp is refused with.
std::string refusalOf (const Preamp& preamp, const std::vector<std::reference_wrapper<const Card>>& cards = {})
{
    try
    {
        const PreampChain chain (preamp, rateHz, cards);
    }
    catch (const Error& error)
    {
        return error.what();
    }
    return {};
}

TEST (PreampChain, RefusesInASentence)
{
    auto stage = amplifier (1.0);
    stage.rails = SupplyRails { 1.0, 6.0 };
    EXPECT_EQ (refusalOf (preampOf ({ stage })),
               "Preamp 'Main', stage 'Amplifier': its rails of 1.00 V and 6.00 V cannot be; give one below 0 V and one "
               "above, re the resting point.");
    stage = amplifier (1.0);
    stage.coupling = Coupling { 0.0, 47e3 };
    EXPECT_EQ (refusalOf (preampOf ({ stage })),
               "Preamp 'Main', stage 'Amplifier': its coupling capacitor of 0 F cannot be; give a positive value.");
    EXPECT_EQ (refusalOf (preampOf ({ circuit() })),
               "Preamp 'Main', stage 'Tone': there is no card with its network; name one that can be read.");
    const Card two = otherCard();
    EXPECT_NE (refusalOf (preampOf ({ circuit() }), listOf (two)).find ("2 taps; give it exactly one"),
               std::string::npos);
    EXPECT_NE (refusalOf (preampOf ({ amplifier (1.0) }), listOf (two)).find ("1 cards were given"), std::string::npos);
    Card broken = toneCard();
    broken.output = "nowhere";
    EXPECT_NE (refusalOf (preampOf ({ circuit() }), listOf (broken)).find ("stage 'Tone'"), std::string::npos);
    EXPECT_THROW (PreampChain (preampOf ({}), 48000.0), Error);
}

} // namespace
} // namespace stopwright
