// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

ProgramResult effect (std::vector<std::string> more)
{
    std::vector<std::string> all { "effect", preset ("LarkfieldOrgan.json"), "--stop", "Krummhorn 8" };
    all.insert (all.end(), more.begin(), more.end());
    return runProgram (all);
}

} // namespace

TEST (EffectCommand, ListsEveryOtherStop)
{
    const auto result = effect ({ "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    EXPECT_EQ (firstLine (result.out),
               "stop,same_bus,drawn_db,drawn_largest_db,drawn_largest_key,open_db,open_largest_db,open_largest_key,"
               "grounded_db,grounded_largest_db,grounded_largest_key,over_limit");
    EXPECT_EQ (std::count (result.out.begin(), result.out.end(), '\n'), 15);
    EXPECT_NE (result.out.find ("\nOboe 8,1,-0."), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("\nDiapason 8,0,0,0,,0,0,,0,0,,0\n"), std::string::npos) << result.out;
}

TEST (EffectCommand, ListsTheTaps)
{
    const auto result = effect ({ "--csv", "--list", "taps" });
    EXPECT_EQ (firstLine (result.out), "tap,behind_ohm,key,frequency_hz,input_re_ohm,input_im_ohm,bus_db,over_limit");
    EXPECT_EQ (std::count (result.out.begin(), result.out.end(), '\n'), 7); // two taps at three keys
    EXPECT_NE (result.out.find ("\n1,1000,C2,"), std::string::npos) << result.out;
}

TEST (EffectCommand, WarnsAboveTheLimitOnly)
{
    const auto strict = effect ({});
    EXPECT_NE (strict.out.find ("Warning: Oboe 8 loses 0.67 dB at F3"), std::string::npos) << strict.out;
    EXPECT_NE (strict.out.find ("common practice"), std::string::npos);
    const auto lax = effect ({ "--limit", "3" });
    EXPECT_EQ (lax.out.find ("Warning"), std::string::npos) << lax.out;
    EXPECT_NE (lax.out.find ("Nothing changes by more than 3.00 dB"), std::string::npos) << lax.out;
}

TEST (EffectCommand, SaysWhatIsWrong)
{
    const auto unknown = runProgram ({ "effect", preset ("LarkfieldOrgan.json"), "--stop", "Kinura 8" });
    EXPECT_EQ (unknown.status, 1);
    EXPECT_EQ (unknown.errorLines(), 1);
    EXPECT_NE (unknown.err.find ("Krummhorn 8"), std::string::npos) << unknown.err;
    EXPECT_EQ (effect ({ "--limit", "-1" }).status, 2);
    EXPECT_EQ (effect ({ "--list", "all" }).status, 2);
}

} // namespace stopwright
