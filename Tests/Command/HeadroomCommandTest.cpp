// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Organ/InstrumentDocument.h"
#include "Study/HeadroomStudy.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

std::vector<std::string> linesOf (const std::string& text)
{
    std::istringstream stream (text);
    std::vector<std::string> lines;
    for (std::string line; std::getline (stream, line);)
        lines.push_back (line);
    return lines;
}

std::vector<std::string> cellsOf (const std::string& line)
{
    std::istringstream stream (line);
    std::vector<std::string> cells;
    for (std::string cell; std::getline (stream, cell, ',');)
        cells.push_back (cell);
    return cells;
}

ProgramResult headroom (std::vector<std::string> arguments)
{
    arguments.insert (arguments.begin(), { "headroom", preset ("LarkfieldOrgan.json") });
    return runProgram (arguments);
}

} // namespace

TEST (HeadroomCommand, PrintsWhatTheLibraryComputes)
{
    const auto result = headroom ({ "--stops", "Oboe 8, Krummhorn 8", "--chord", "C3 E3 G3 C4", "--csv" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    const auto lines = linesOf (result.out);
    EXPECT_EQ (
        lines.at (0),
        "stage,preamp,role,limit_low_v,limit_high_v,peak_low_v,peak_high_v,rms_v,crest_db,below_percent,above_percent,"
        "exceeded_v,room_db,room_at_share_db,feedback_ohm,gain_ratio,series_ohm,emitter_a");
    const auto file = preset ("LarkfieldOrgan.json");
    auto instrument = readInstrument (file);
    for (StopTablet& stop : instrument.stops)
        stop.drawn = stop.name == "Oboe 8" || stop.name == "Krummhorn 8";
    HeadroomRequest request;
    for (const int key : { 48, 52, 55, 60 })
        request.held.push_back ({ "Upper manual", key });
    const auto wanted = headroomOf (instrument, instrumentCards (instrument, file), request);
    ASSERT_EQ (lines.size(), wanted.size() + 1);
    for (std::size_t stage = 0; stage < wanted.size(); ++stage)
    {
        const auto cells = cellsOf (lines[stage + 1]);
        ASSERT_GE (cells.size(), 14U);
        EXPECT_EQ (cells[0], wanted[stage].name);
        EXPECT_NEAR (std::stod (cells[5]), wanted[stage].lowestVolts, 1e-11);
        EXPECT_NEAR (std::stod (cells[6]), wanted[stage].highestVolts, 1e-11);
        EXPECT_NEAR (std::stod (cells[7]), wanted[stage].rmsVolts, 1e-11);
    }
    EXPECT_EQ (cellsOf (lines[1])[2], "passive bus");
    for (const std::size_t unlimited : { 3U, 4U, 9U, 10U, 12U, 13U })
        EXPECT_EQ (cellsOf (lines[1])[unlimited], "") << "no limit, no cell: " << unlimited;
    EXPECT_NEAR (std::stod (cellsOf (lines[2])[9]), 100.0 * wanted[1].shareBelow, 1e-9);
    EXPECT_EQ (result.out.find ("inf"), std::string::npos);
}

TEST (HeadroomCommand, SaysWhichStageClipsFirstAndWhatToDo)
{
    const auto loud = headroom ({ "--stops", "Diapason 8, Principal 4, Trumpet 8", "--all-keys" });
    ASSERT_EQ (loud.status, 0) << loud.err;
    EXPECT_NE (loud.out.find ("First to clip, and it does: "), std::string::npos) << loud.out;
    EXPECT_NE (loud.out.find ("feedback resistor"), std::string::npos);
    EXPECT_NE (loud.out.find ("in series with its input"), std::string::npos);
    EXPECT_NE (loud.out.find ("all 61 keys of \"Lower manual\" held"), std::string::npos);
    const auto soft = headroom ({ "--stops", "Stopped flute 8", "--chord", "C4", "--share", "1" });
    ASSERT_EQ (soft.status, 0) << soft.err;
    EXPECT_NE (soft.out.find ("Nothing clips"), std::string::npos) << soft.out;
    EXPECT_NE (soft.out.find ("over 1 % of time"), std::string::npos) << soft.out;
}

TEST (HeadroomCommand, KeysAreHeldOnEveryDivisionThatIsPlayed)
{
    for (const std::string& keys : { std::string ("--all-keys"), std::string ("--chord=C3 E4") })
    {
        const auto result = headroom ({ "--stops", "Oboe 8, Diapason 8, Sub bass 16", keys, "--csv" });
        ASSERT_EQ (result.status, 0) << result.err;
        EXPECT_EQ (result.err, "");
        const auto lines = linesOf (result.out);
        ASSERT_EQ (lines.size(), 1U + 2U + 3U + 2U) << result.out;
        for (std::size_t row = 1; row < lines.size(); ++row)
            EXPECT_GT (std::stod (cellsOf (lines[row]).at (7)), 1e-3) << lines[row];
    }
    const auto table = headroom ({ "--stops", "Oboe 8, Diapason 8", "--chord", "C3 E4" });
    EXPECT_NE (table.out.find ("2 keys of \"Upper manual\" and 2 keys of \"Lower manual\" held"), std::string::npos)
        << table.out;
}

TEST (HeadroomCommand, TheUsualNotesFitThePedal)
{
    const auto result = headroom ({ "--stops", "Sub bass 16" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("7 keys of \"Pedal\" held"), std::string::npos) << result.out;
    EXPECT_NE (result.out.find ("Left away on \"Pedal\", whose compass does not have them: G4, C5 and E5."),
               std::string::npos)
        << result.out;
}

TEST (HeadroomCommand, NamesDrawnStopsThatStaySilent)
{
    const std::vector<std::string> arguments { "--stops", "Oboe 8, Krummhorn 8, Sub bass 16", "--division", "Pedal" };
    const std::string remark =
        "Drawn but silent, as no key of \"Upper manual\" sounds: \"Krummhorn 8\" and \"Oboe 8\".\n";
    const auto table = headroom (arguments);
    ASSERT_EQ (table.status, 0) << table.err;
    EXPECT_NE (table.out.find (remark), std::string::npos) << table.out;
    EXPECT_EQ (table.out.find ("inf"), std::string::npos) << table.out;
    auto csv = arguments;
    csv.emplace_back ("--csv");
    const auto listed = headroom (csv);
    EXPECT_EQ (listed.err.substr (listed.err.find ("Drawn")), remark);
    EXPECT_EQ (listed.out.find ("Drawn"), std::string::npos);
    EXPECT_EQ (listed.out.find ("inf"), std::string::npos) << listed.out;
}

TEST (HeadroomCommand, NothingThatSoundsIsNoReading)
{
    const auto result = headroom ({ "--stops", "Stopped flute 8", "--chord", "C3", "--division", "Lower manual" });
    EXPECT_EQ (result.status, 1);
    EXPECT_EQ (result.out, "");
    EXPECT_EQ (result.errorLines(), 1) << result.err;
    EXPECT_NE (result.err.find ("\"Stopped flute 8\" because no key of \"Upper manual\" sounds"), std::string::npos)
        << result.err;
}

TEST (HeadroomCommand, CouplersAreTablets)
{
    const auto rms = [] (const std::string& stops, const std::string& division)
    {
        const auto result = headroom ({ "--stops", stops, "--chord", "C3", "--division", division, "--csv" });
        EXPECT_EQ (result.status, 0) << result.err;
        EXPECT_EQ (result.out.find ("nan"), std::string::npos) << result.out;
        return std::stod (cellsOf (linesOf (result.out).at (1)).at (7));
    };
    const double alone = rms ("Stopped flute 8", "Upper manual");
    EXPECT_NEAR (rms ("Stopped flute 8, Upper to Lower", "Lower manual"), alone, 1e-9);
    EXPECT_GT (rms ("Stopped flute 8, Upper octave", "Upper manual"), 1.05 * alone);
    const auto idle = headroom ({ "--stops", "Stopped flute 8, Upper to Lower" });
    EXPECT_NE (idle.out.find ("The coupler \"Upper to Lower\" plays nothing, as no key of \"Lower manual\" is held"),
               std::string::npos)
        << idle.out;
}

TEST (HeadroomCommand, SaysWhatInputsAreTakenFor)
{
    const auto result = headroom ({});
    EXPECT_NE (result.out.find ("a stage's input resistance is no load of its own"), std::string::npos) << result.out;
    EXPECT_EQ (result.out.find ("told too high"), std::string::npos) << "10 k hold 47 k";
}

TEST (HeadroomCommand, Inputs)
{
    const auto result = headroom ({ "--inputs", "--csv", "--stops", "Krummhorn 8, Stopped flute 8" });
    ASSERT_EQ (result.status, 0) << result.err;
    const auto lines = linesOf (result.out);
    EXPECT_EQ (lines.at (0),
               "input,preamp,on_peak_v,on_source_ohm,on_pin_a,on_series_ohm,off_peak_v,off_source_ohm,off_pin_a,"
               "off_series_ohm");
    EXPECT_EQ (lines.size(), 4U) << result.out;
    const auto table = headroom ({ "--inputs", "--diode", "0.3", "--pin-limit", "10u" });
    ASSERT_EQ (table.status, 0) << table.err;
    EXPECT_NE (table.out.find ("300 mV"), std::string::npos) << table.out;
    EXPECT_NE (table.out.find ("10.0 µA"), std::string::npos) << table.out;
}

TEST (HeadroomCommand, BadInputIsOneSentence)
{
    for (const std::vector<std::string>& arguments : { std::vector<std::string> { "--stops", "Kinura 8" },
                                                       { "--chord", "C8" },
                                                       { "--division", "Attic" },
                                                       { "--all-keys", "--division", "Attic" } })
    {
        const auto result = headroom (arguments);
        EXPECT_EQ (result.status, 1) << arguments.back();
        EXPECT_EQ (result.out, "") << "half a table is none";
        EXPECT_EQ (result.errorLines(), 1) << result.err;
    }
    for (const std::vector<std::string>& arguments : { std::vector<std::string> { "--chord", "H4" },
                                                       { "--chord", "C4", "--all-keys" },
                                                       { "--margin", "-1" },
                                                       { "--share", "0" },
                                                       { "--diode", "x" } })
    {
        const auto result = headroom (arguments);
        EXPECT_EQ (result.status, 2) << arguments.back();
        EXPECT_EQ (result.errorLines(), 1) << result.err;
    }
}

} // namespace stopwright
