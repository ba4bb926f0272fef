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
        "stage,preamp,role,limit_low_v,limit_high_v,peak_low_v,peak_high_v,rms_v,crest_db,below_share,above_share,"
        "exceeded_v,room_db,room_at_share_db,feedback_ohm,gain,series_ohm,emitter_a");
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
        EXPECT_EQ (cells[0], '"' + wanted[stage].name + '"');
        EXPECT_NEAR (std::stod (cells[5]), wanted[stage].lowestVolts, 1e-11);
        EXPECT_NEAR (std::stod (cells[6]), wanted[stage].highestVolts, 1e-11);
        EXPECT_NEAR (std::stod (cells[7]), wanted[stage].rmsVolts, 1e-11);
    }
    EXPECT_EQ (cellsOf (lines[1])[2], "passive bus");
    EXPECT_EQ (cellsOf (lines[1])[3], "-inf");
}

TEST (HeadroomCommand, SaysWhichStageClipsFirstAndWhatToDo)
{
    const auto loud = headroom ({ "--stops", "Diapason 8, Principal 4, Trumpet 8", "--all-keys" });
    ASSERT_EQ (loud.status, 0) << loud.err;
    EXPECT_NE (loud.out.find ("First to clip, and it does: "), std::string::npos) << loud.out;
    EXPECT_NE (loud.out.find ("feedback resistor"), std::string::npos);
    EXPECT_NE (loud.out.find ("in series with its input"), std::string::npos);
    EXPECT_NE (loud.out.find ("152 keys held"), std::string::npos);
    const auto soft = headroom ({ "--stops", "Stopped flute 8", "--chord", "C4", "--share", "1" });
    ASSERT_EQ (soft.status, 0) << soft.err;
    EXPECT_NE (soft.out.find ("Nothing clips"), std::string::npos) << soft.out;
    EXPECT_NE (soft.out.find ("over 1 % of time"), std::string::npos) << soft.out;
}

TEST (HeadroomCommand, CouplersAreTablets)
{
    const auto rms = [] (const std::string& stops)
    {
        const auto result = headroom ({ "--stops", stops, "--chord", "C3", "--division", "Lower manual", "--csv" });
        EXPECT_EQ (result.status, 0) << result.err;
        EXPECT_EQ (result.out.find ("nan"), std::string::npos) << result.out;
        return std::stod (cellsOf (linesOf (result.out).at (1)).at (7));
    };
    EXPECT_EQ (rms ("Stopped flute 8"), 0.0);
    EXPECT_GT (rms ("Stopped flute 8, Upper to Lower"), 0.01);
}

TEST (HeadroomCommand, Inputs)
{
    const auto result = headroom ({ "--inputs", "--csv" });
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
