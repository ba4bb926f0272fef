// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OutletStage.h"

#include "Sound/TestTones.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

namespace stopwright
{
namespace
{

using namespace test;

constexpr double rateHz = 48000.0;

Outlet outletOf (OutletKind kind, bool isOn = true)
{
    Outlet outlet;
    outlet.name = "Large box";
    outlet.kind = kind;
    outlet.isOn = isOn;
    return outlet;
}

std::vector<double> steady (std::size_t frames)
{
    return std::vector<double> (frames, 1.0);
}

TEST (OutletStage, PassesTheMainOutletUntouched)
{
    Random random (81);
    const auto in = noise (300, 1.0, random);
    OutletStage stage (outletOf (OutletKind::main), rateHz);
    stage.setOn (false);
    stage.setTremulant ({});
    EXPECT_EQ (throughWhole (stage, in), in);
    EXPECT_EQ (stage.latencyFrames(), 0);
}

TEST (OutletStage, FollowsTheSwellOnlyWhereItShould)
{
    for (const auto kind : { OutletKind::main, OutletKind::tremulant })
        for (const bool follows : { true, false })
        {
            auto outlet = outletOf (kind, false);
            outlet.swell = follows;
            outlet.swellFloorDb = -40.0;
            OutletStage stage (outlet, rateHz);
            stage.setSwell (0.85);
            throughWhole (stage, steady (2000));
            EXPECT_NEAR (toDecibels (throughWhole (stage, steady (1)).front()), follows ? -6.0 : 0.0, 1e-9);
        }
}

TEST (OutletStage, SwingsWhenOn)
{
    for (const bool isOn : { true, false })
    {
        OutletStage stage (outletOf (OutletKind::tremulant, isOn), rateHz);
        auto gains = throughWhole (stage, steady (16000));
        EXPECT_NEAR (*std::max_element (gains.begin(), gains.end()), isOn ? 1.3 : 1.0, 1e-6);
        stage.setOn (! isOn);
        throughWhole (stage, steady (16000));
        gains = throughWhole (stage, steady (16000));
        EXPECT_NEAR (*std::max_element (gains.begin(), gains.end()), isOn ? 1.0 : 1.3, 1e-6);
    }
}

TEST (OutletStage, SaysHowLateItsRotorsAre)
{
    const OutletStage stage (outletOf (OutletKind::rotary), rateHz);
    EXPECT_EQ (stage.latencyFrames(), RotarySpeaker ({}, true, rateHz).latencyFrames());
    EXPECT_GT (stage.latencyFrames(), 21); // 0.15 m of sound alone
}

TEST (OutletStage, DoesNotCareHowTheStreamIsCut)
{
    Random random (82);
    const auto in = noise (10000, 1.0, random);
    for (const auto kind : { OutletKind::main, OutletKind::tremulant, OutletKind::rotary })
    {
        OutletStage whole (outletOf (kind), rateHz);
        OutletStage pieces (outletOf (kind), rateHz);
        for (OutletStage* const stage : { &whole, &pieces })
        {
            stage->setSwell (0.3);
            stage->setOn (false);
        }
        EXPECT_EQ (throughWhole (whole, in), throughPieces (pieces, in, random)); // to the last bit
    }
}

TEST (OutletStage, GoesOnFromAnotherOfTheSameMakeAndRecovers)
{
    Random random (83);
    const auto in = noise (10000, 1.0, random);
    for (const auto kind : { OutletKind::main, OutletKind::tremulant, OutletKind::rotary })
    {
        OutletStage stage (outletOf (kind), rateHz);
        stage.setSwell (0.3);
        throughWhole (stage, in);
        OutletStage other (outletOf (kind), rateHz);
        ASSERT_TRUE (other.isLike (stage));
        other.copyStateFrom (stage);
        EXPECT_EQ (throughWhole (other, in), throughWhole (stage, in));

        auto bad = in;
        bad[7] = std::numeric_limits<double>::quiet_NaN();
        stage.process (bad);
        stage.reset();
        other.reset();
        EXPECT_EQ (throughWhole (other, in), throughWhole (stage, in));
    }
    EXPECT_FALSE (OutletStage (outletOf (OutletKind::main), rateHz)
                      .isLike (OutletStage (outletOf (OutletKind::tremulant), rateHz)));
    EXPECT_FALSE (
        OutletStage (outletOf (OutletKind::main), rateHz).isLike (OutletStage (outletOf (OutletKind::main), 44100.0)));
}

TEST (OutletStage, RefusesInASentenceWithItsName)
{
    auto outlet = outletOf (OutletKind::rotary);
    outlet.rotary.drum.radiusMetres = 1.5;
    try
    {
        const OutletStage stage (outlet, rateHz);
        FAIL() << "a drum around the microphone";
    }
    catch (const Error& error)
    {
        EXPECT_NE (std::string (error.what()).find ("Outlet 'Large box': A rotor with a radius of 1.50 m"),
                   std::string::npos)
            << error.what();
    }
    EXPECT_THROW (OutletStage (outletOf (OutletKind::main), 0.0), Error);
}

} // namespace
} // namespace stopwright
