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

ProgramResult together (std::vector<std::string> more)
{
    std::vector<std::string> all { "together", preset ("LarkfieldOrgan.json") };
    all.insert (all.end(), more.begin(), more.end());
    return runProgram (all);
}

} // namespace

TEST (TogetherCommand, ListsTheSums)
{
    const auto result = together ({ "--stops", "Krummhorn 8, Stopped flute 8", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    EXPECT_EQ (firstLine (result.out),
               "keys,stop,alone_dbv,in_company_dbv,power_sum_dbv,sum_dbv,sum_dbva,re_powers_db,re_strongest_db");
    EXPECT_EQ (std::count (result.out.begin(), result.out.end(), '\n'), 1 + 2 * 61);
    EXPECT_NE (result.out.find ("\nC#4,Krummhorn 8,"), std::string::npos);
}

TEST (TogetherCommand, HoldsAChord)
{
    const auto result = together ({ "--stops", "Diapason 8, Principal 4", "--chord", "C3 C4", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (std::count (result.out.begin(), result.out.end(), '\n'), 3);
    EXPECT_NE (result.out.find ("\nC3 C4,Principal 4,"), std::string::npos) << result.out;
}

TEST (TogetherCommand, ListsSharedPartialsAndPolarity)
{
    const auto partials = together ({ "--stops", "Oboe 8, String 8", "--keys", "C6", "--list", "partials", "--csv" });
    EXPECT_EQ (firstLine (partials.out),
               "keys,harmonic,frequency_hz,strongest_peak_v,power_sum_peak_v,sum_peak_v,re_powers_db");
    EXPECT_GT (std::count (partials.out.begin(), partials.out.end(), '\n'), 5);
    const auto polarity = together ({ "--stops", "Oboe 8, String 8", "--list", "polarity", "--csv" });
    EXPECT_EQ (firstLine (polarity.out),
               "stop,other,key,sum_re_stronger_db,turned_re_stronger_db,shared_partials,cancelled_harmonics");
    EXPECT_EQ (std::count (polarity.out.begin(), polarity.out.end(), '\n'), 62);
}

TEST (TogetherCommand, AdvisesOnPolarity)
{
    const auto bad = together ({ "--stops", "Krummhorn 8, Stopped flute 8" });
    EXPECT_NE (bad.out.find ("Turn the polarity of Krummhorn 8 or of Stopped flute 8"), std::string::npos) << bad.out;
    EXPECT_NE (bad.out.find ("of 61 keys (C#5 to G#6)"), std::string::npos) << bad.out;
    EXPECT_NE (bad.out.find ("Krummhorn 8 by Main, Stopped flute 8 by Tremulant"), std::string::npos) << bad.out;
    const auto good = together ({ "--stops", "Diapason 8, Principal 4" });
    EXPECT_NE (good.out.find ("Leave their polarity as it is"), std::string::npos) << good.out;
    EXPECT_EQ (good.out.find ("different outlets"), std::string::npos) << good.out;
}

TEST (TogetherCommand, SaysWhatIsWrong)
{
    const auto unknown = together ({ "--stops", "Kinura 8" });
    EXPECT_EQ (unknown.status, 1);
    EXPECT_EQ (unknown.errorLines(), 1) << unknown.err;
    const auto tooHigh = together ({ "--stops", "Oboe 8", "--keys", "C8" });
    EXPECT_EQ (tooHigh.status, 1);
    EXPECT_NE (tooHigh.err.find ("C2 to C7"), std::string::npos) << tooHigh.err;
    EXPECT_EQ (together ({}).status, 2);
    EXPECT_EQ (together ({ "--stops", " , " }).status, 2);
    EXPECT_EQ (together ({ "--stops", "Oboe 8", "--keys", "C4", "--chord", "C4" }).status, 2);
}

} // namespace stopwright
