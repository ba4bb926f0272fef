// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvTable.h"
#include "Command/ProgramRun.h"
#include "Organ/CardDocument.h"
#include "Organ/MaskDocument.h"
#include "Study/MaskFit.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr const char* header = "key,entry,frequency_hz,wanted_db,tolerance_db,level_db,residual_db,outside_db,verdict,"
                               "offset_db,rms_db,largest_db,rms_outside_db,largest_outside_db";

std::string organ()
{
    return preset ("LarkfieldOrgan.json");
}

std::string mask (const std::string& name)
{
    return preset ("Masks/" + name + ".json");
}

void expectFault (const std::vector<std::string>& arguments, int status, const std::string& word)
{
    std::vector<std::string> all { "mask" };
    all.insert (all.end(), arguments.begin(), arguments.end());
    const auto result = runProgram (all);
    EXPECT_EQ (result.status, status) << result.out;
    EXPECT_EQ (result.errorLines(), 1) << result.err;
    EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in: " << result.err;
}

} // namespace

TEST (MaskCommand, EveryMaskOfTheLibraryLoadsChecksAndCompares)
{
    int masks = 0;
    for (const auto& entry : std::filesystem::directory_iterator (preset ("Masks")))
    {
        const auto file = entry.path().string();
        const auto check = runProgram ({ "check", file });
        EXPECT_EQ (check.status, 0) << check.err;
        EXPECT_EQ (check.out.find ("warning"), std::string::npos) << check.out;
        for (const std::string job : { "mask", "source" })
        {
            const auto result = runProgram ({ job, organ(), "--stop", "Krummhorn 8", "--mask", file });
            EXPECT_EQ (result.status, 0) << file << result.err;
            EXPECT_NE (result.out.find ("Krummhorn 8"), std::string::npos) << file;
        }
        ++masks;
    }
    EXPECT_EQ (masks, 27);
}

/// The cards of the demonstration organ were made for these pictures (common practice, no source).
TEST (MaskCommand, StopsOfTheOrganAreWithinTheirStartingMasks)
{
    for (const auto& [stop, name] :
         std::vector<std::pair<std::string, std::string>> { { "Krummhorn 8", "Krummhorn8" },
                                                            { "Clarinet 8", "Clarinet8" },
                                                            { "Diapason 8", "Diapason8" },
                                                            { "Trumpet 8", "Trumpet8" },
                                                            { "Oboe 8", "Oboe8" },
                                                            { "String 8", "String8" },
                                                            { "French horn 8", "Horn8" },
                                                            { "Stopped flute 8", "StoppedFlute8" } })
    {
        const auto result = runProgram ({ "mask", organ(), "--stop", stop, "--mask", mask (name) });
        EXPECT_NE (result.out.find ("1 of 1 key within the tolerances"), std::string::npos) << stop << result.out;
    }
    const auto other = runProgram ({ "mask", organ(), "--stop", "Stopped flute 8", "--mask", mask ("Krummhorn8") });
    EXPECT_NE (other.out.find ("0 of 1 key within the tolerances"), std::string::npos) << other.out;
}

TEST (MaskCommand, PrintsWhatTheLibraryComputes)
{
    const auto result =
        runProgram ({ "mask", preset ("Clarinet8.json"), "--mask", mask ("Clarinet8"), "--keys", "C3 F#4", "--csv" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (firstLine (result.out), header);
    const auto rows = csvTable (result.out);
    const auto wanted = readMask (mask ("Clarinet8"));
    const auto card = readCard (preset ("Clarinet8.json"));
    ASSERT_EQ (rows.size(), 2 * wanted.harmonics.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
        const auto fit = fitMask (wanted, toneOfCard (card, keySourceForCardAlone (card),
                                                      i < wanted.harmonics.size() ? 48 : 66, wanted.unison));
        const auto& entry = fit.entries[i % wanted.harmonics.size()];
        EXPECT_EQ (rows[i].at ("key"), keyName (fit.key));
        EXPECT_EQ (rows[i].at ("entry"), "h" + std::to_string (i % wanted.harmonics.size() + 1));
        EXPECT_NEAR (std::stod (rows[i].at ("level_db")), entry.levelDb, 1e-9);
        EXPECT_NEAR (std::stod (rows[i].at ("residual_db")), entry.residualDb, 1e-9);
        EXPECT_NEAR (std::stod (rows[i].at ("rms_db")), fit.rmsDb, 1e-9);
        EXPECT_NEAR (std::stod (rows[i].at ("offset_db")), fit.offsetDb, 1e-9);
    }
}

TEST (MaskCommand, AMaskOfTheStopsOwnLevelsFits)
{
    const auto card = readCard (preset ("Oboe8.json"));
    const auto tone = toneOfCard (card, keySourceForCardAlone (card), 60, Footage());
    double strongest = 0.0;
    for (const auto& partial : tone.partials)
        strongest = std::max (strongest, partial.peakVolts);
    TargetMask own;
    own.name = "Own";
    own.certainty = Certainty::measured;
    for (const auto& partial : tone.partials)
        if (const double level = 20.0 * std::log10 (partial.peakVolts / strongest); level > -100.0)
            own.harmonics.push_back ({ static_cast<int> (partial.harmonic), false, { level, 0.001 } });
    const ScratchFolder scratch;
    writeMask (own, scratch / "own.json");
    const auto result = runProgram (
        { "mask", preset ("Oboe8.json"), "--mask", (scratch / "own.json").string(), "--keys", "C4", "--csv" });
    for (const auto& row : csvTable (result.out))
    {
        EXPECT_NEAR (std::stod (row.at ("residual_db")), 0.0, 1e-6);
        EXPECT_EQ (row.at ("verdict"), "inside");
    }
    EXPECT_GT (csvTable (result.out).size(), 20U);
}

TEST (MaskCommand, SaysWhatIsAbsentInWords)
{
    const ScratchFolder scratch;
    const auto file = scratch.write ("m.json", R"({ "stopwright": 1, "kind": "mask", "name": "Octaves",
      "certainty": "common practice", "harmonics": [ { "harmonic": 1, "levelDb": 0, "toleranceDb": 6 },
      { "harmonic": 16, "levelDb": -12, "toleranceDb": 6 } ],
      "bands": [ { "name": "a, \"b\"", "centreHz": "1k4", "widthHz": 300, "levelDb": 0, "toleranceDb": 60 } ] })");
    const auto result = runProgram ({ "mask", preset ("Diapason8.json"), "--mask", file, "--keys", "C3" });
    EXPECT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("h16 absent"), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("stopwright source says why"), std::string::npos) << result.out;
    EXPECT_EQ (result.out.find ("inf"), std::string::npos) << result.out;
    const auto csv = runProgram ({ "mask", preset ("Diapason8.json"), "--mask", file, "--keys", "C3", "--csv" });
    const auto rows = csvTable (csv.out);
    ASSERT_EQ (rows.size(), 3U);
    EXPECT_EQ (rows[1].at ("level_db"), "-inf");
    EXPECT_EQ (rows[1].at ("verdict"), "absent");
    EXPECT_EQ (rows[1].at ("largest_outside_db"), "0");
    EXPECT_EQ (rows[2].at ("entry"), R"(band a, "b")") << csv.out;
}

TEST (MaskCommand, KnowsTheKeysOfTheMaskAndOfTheKeyboard)
{
    const auto whole = runProgram ({ "mask", organ(), "--stop", "Oboe 8", "--mask", mask ("OboeFormants"), "--csv" });
    EXPECT_EQ (csvTable (whole.out).size(), 2U * 61U);
    const auto other =
        runProgram ({ "mask", organ(), "--stop", "Krummhorn 8", "--mask", mask ("Krummhorn8"), "--keys", "C3" });
    EXPECT_NE (other.out.find ("not among those it is meant for"), std::string::npos) << other.out;
    expectFault ({ organ(), "--stop", "Krummhorn 8", "--mask", mask ("Krummhorn8"), "--keys", "C1" }, 1, "C2 to C7");
    const ScratchFolder scratch;
    auto high = readMask (mask ("Krummhorn8"));
    high.lowestKey = high.highestKey = 108;
    writeMask (high, scratch / "high.json");
    expectFault ({ organ(), "--stop", "Krummhorn 8", "--mask", (scratch / "high.json").string() }, 1, "--keys");
}

TEST (MaskCommand, RefusesWithOneSentence)
{
    expectFault ({ organ(), "--mask", mask ("Oboe8") }, 1, "--stop");
    expectFault ({ preset ("Oboe8.json"), "--stop", "Oboe 8", "--mask", mask ("Oboe8") }, 1, "leave --stop out");
    expectFault ({ organ(), "--stop", "Obo 8", "--mask", mask ("Oboe8") }, 1, "Oboe 8");
    expectFault ({ organ(), "--stop", "Oboe 8", "--mask", organ() }, 1, "a mask is wanted");
    expectFault ({ mask ("Oboe8"), "--mask", mask ("Oboe8") }, 1, "a card or an instrument is wanted");
    expectFault ({ organ(), "--stop", "Oboe 8", "--mask", "nowhere.json" }, 1, "nowhere.json");
    expectFault ({ organ(), "--stop", "Oboe 8" }, 2, "--mask");
    expectFault ({ organ(), "--stop", "Oboe 8", "--mask", mask ("Oboe8"), "--keys", "H4" }, 2, "H4");
}

TEST (MaskCommand, CheckExplainsAMask)
{
    const auto formants = runProgram ({ "check", mask ("BassoonFormants") });
    EXPECT_EQ (formants.status, 0) << formants.err;
    for (const std::string words : { "mask \"Bassoon formants\"", "keys    C2 to C5", "published: E. Sengpiel",
                                     "240 Hz about 440 Hz", "Fletcher and Rossing", "3 dB either way" })
        EXPECT_NE (formants.out.find (words), std::string::npos) << "no " << words << " in: " << formants.out;
    const auto levels = runProgram ({ "check", mask ("Tibia8") });
    for (const std::string words : { "source  common practice, no source", "keys    C4", "re the first",
                                     "h2: -40 dB, 6 dB either way", "h4: at most -45 dB" })
        EXPECT_NE (levels.out.find (words), std::string::npos) << "no " << words << " in: " << levels.out;
    const ScratchFolder scratch;
    const auto warned = runProgram ({ "check", scratch.write ("m.json", R"({ "stopwright": 1, "kind": "mask",
      "certainty": "measured", "harmonics": [ { "harmonic": 3, "levelDb": 0, "toleranceDb": 1, "tolerence": 3 } ] })") });
    EXPECT_EQ (warned.status, 0);
    EXPECT_NE (warned.out.find ("harmonic 3: the field \"tolerence\" is unknown; did you mean \"toleranceDb\"?"),
               std::string::npos)
        << warned.out;
}

} // namespace stopwright
