// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"
#include "Organ/CardDocument.h"

#include <fstream>
#include <sstream>

namespace stopwright
{

namespace
{

using BenchSessionTest = BenchFixture;

std::string contents (const std::filesystem::path& file)
{
    std::ifstream stream (file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

/// A card with a switch and a potentiometer, and a field that the program does not know.
constexpr const char* switchedCard = R"({
  "stopwright": 1, "kind": "card", "name": "Switched", "workshop": { "drawer": 7 },
  "taps": [ { "name": "W1", "wave": "square", "footage": "8", "vpp": 2.0, "sourceOhms": "1k", "node": "in" } ],
  "parts": [
    { "name": "R1", "kind": "resistor", "nodes": ["in", "t"], "value": "10k", "colour": "blue" },
    { "name": "S1", "kind": "switch", "nodes": ["t", "s"], "closed": false },
    { "name": "R2", "kind": "resistor", "nodes": ["s", "0"], "value": "1k" },
    { "name": "P1", "kind": "potentiometer", "nodes": ["t", "out", "0"], "value": "100k", "position": 0.5 }
  ],
  "output": "out" })";

} // namespace

TEST_F (BenchSessionTest, OpensTheProposedStop)
{
    EXPECT_EQ (session_.card().name, "Krummhorn 8");
    EXPECT_FALSE (session_.document().isUnsaved());
    EXPECT_EQ (session_.keySource().lowestKey, 36);
    EXPECT_EQ (session_.keySource().highestKey, 96);
}

TEST_F (BenchSessionTest, TwentyMixedEditsUndoAndRedoToTheByte)
{
    std::ofstream (preset ("Switched.json")) << switchedCard;
    session_.open (preset ("Switched.json"));

    const CardKnob knobs[] = { { CardKnob::Place::part, "R1", KnobKind::value },
                               { CardKnob::Place::part, "P1", KnobKind::position },
                               { CardKnob::Place::part, "P1", KnobKind::value },
                               { CardKnob::Place::tapLevel, "W1", KnobKind::value } };
    std::vector<std::string> texts { cardText (session_.card()) };
    for (int edit = 0; edit < 20; ++edit)
    {
        if (edit % 5 == 4)
        {
            session_.setSwitch ("S1", edit % 10 == 4);
        }
        else
        {
            const auto& knob = knobs[edit % 4];
            // Every third position is an end of the track.
            const double value = knob.kind == KnobKind::position ? (edit % 3) * 0.5 + 0.01 * (edit % 2)
                                                                 : valueOf (session_.card(), knob) * 1.1;
            session_.turn (knob, value);
        }
        play (0.02);
        if (const auto text = cardText (session_.card()); text != texts.back())
            texts.push_back (text);
    }
    ASSERT_GE (texts.size(), 15u);

    std::size_t place = texts.size() - 1;
    while (session_.history().canUndo())
    {
        session_.undo();
        ASSERT_GT (place, 0u);
        EXPECT_EQ (cardText (session_.card()), texts[--place]);
    }
    EXPECT_EQ (place, 0u);
    EXPECT_EQ (cardText (session_.card()), texts.front());
    EXPECT_FALSE (session_.document().isUnsaved());

    while (session_.history().canRedo())
        session_.redo();
    EXPECT_EQ (cardText (session_.card()), texts.back());
}

TEST_F (BenchSessionTest, UndoBringsTheSoundBackToo)
{
    processor_.engine().key (60, true);
    const double before = settledRms();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    const double turned = settledRms();
    session_.undo();
    const double after = settledRms();
    EXPECT_LT (turned, 0.7 * before);
    EXPECT_NEAR (after / before, 1.0, 0.01);
}

// A Sallen-Key stage of equal parts runs away when its gain 1 + Rf / Rg exceeds 3.
TEST_F (BenchSessionTest, UndoBringsTheSoundBackAfterTheNetworkRanAway)
{
    std::ofstream (preset ("Runaway.json")) << R"({ "stopwright": 1, "kind": "card", "name": "Runaway",
                "taps": [ { "name": "W1", "wave": "square", "footage": "8", "vpp": 1, "node": "in" } ],
                "parts": [ { "name": "R1", "kind": "resistor", "nodes": ["in", "a"], "value": "10k" },
                           { "name": "R2", "kind": "resistor", "nodes": ["a", "b"], "value": "10k" },
                           { "name": "C1", "kind": "capacitor", "nodes": ["a", "out"], "value": "10n" },
                           { "name": "C2", "kind": "capacitor", "nodes": ["b", "0"], "value": "10n" },
                           { "name": "U1", "kind": "opamp", "nodes": ["b", "m", "out"], "gainBandwidthHz": "1M" },
                           { "name": "R3", "kind": "resistor", "nodes": ["m", "0"], "value": "10k" },
                           { "name": "R4", "kind": "resistor", "nodes": ["out", "m"], "value": "10k" } ],
                "output": "out" })";
    session_.open (preset ("Runaway.json"));
    processor_.engine().key (60, true);
    const double before = settledRms();
    ASSERT_GT (before, 1e-3);
    session_.turn ({ CardKnob::Place::part, "R4", KnobKind::value }, 100e3);
    settledRms (1.0);
    ASSERT_TRUE (processor_.engine().isSilencedByFault());
    EXPECT_EQ (settledRms(), 0.0);
    session_.undo();
    EXPECT_NEAR (settledRms (1.0) / before, 1.0, 0.01);
    EXPECT_FALSE (processor_.engine().isSilencedByFault());
}

TEST_F (BenchSessionTest, ASwitchChangesTheSound)
{
    std::ofstream (preset ("Switched.json")) << switchedCard;
    session_.open (preset ("Switched.json"));
    processor_.engine().key (60, true);
    const double open = settledRms();
    session_.setSwitch ("S1", true);
    const double closed = settledRms();
    EXPECT_LT (closed, 0.3 * open); // 10k against 1k in place of 10k against 100k
    EXPECT_GT (closed, 0.01 * open);
}

TEST_F (BenchSessionTest, ValuesAreBroughtIntoTheirRange)
{
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, -5.0);
    EXPECT_EQ (value ("R5"), ValueLimits::resistance.lowest);
}

TEST_F (BenchSessionTest, SavesAndOpensAgainTheSame)
{
    std::ofstream (preset ("Switched.json")) << switchedCard;
    session_.open (preset ("Switched.json"));
    session_.turn ({ CardKnob::Place::part, "R1", KnobKind::value }, 22e3);
    EXPECT_TRUE (session_.document().isUnsaved());
    session_.save();
    EXPECT_FALSE (session_.document().isUnsaved());

    const auto text = cardText (session_.card());
    EXPECT_EQ (contents (preset ("Switched.json")), text);
    EXPECT_NE (text.find ("\"drawer\""), std::string::npos);
    EXPECT_NE (text.find ("\"colour\""), std::string::npos);

    session_.open (preset ("Switched.json"));
    EXPECT_EQ (cardText (session_.card()), text);
    EXPECT_EQ (value ("R1"), 22e3);
}

TEST_F (BenchSessionTest, SaveAsLeavesTheFirstFileAlone)
{
    const auto before = contents (preset ("Krummhorn8.json"));
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 22e3);
    session_.saveAs (preset ("Mine.json"));
    EXPECT_EQ (contents (preset ("Krummhorn8.json")), before);
    EXPECT_NE (contents (preset ("Mine.json")), before);
    EXPECT_TRUE (session_.document().isUnsaved()); // the tablet keeps its own card

    session_.open (preset ("Oboe8.json"));
    session_.turn ({ CardKnob::Place::tapLevel, session_.card().taps.front().name, KnobKind::value }, 0.5);
    session_.saveAs (preset ("Mine.json"));
    EXPECT_FALSE (session_.document().isUnsaved());
    EXPECT_EQ (session_.document().cardFile(), preset ("Mine.json"));
}

TEST_F (BenchSessionTest, AFileThatCannotBeWrittenIsSaidAndKeepsTheChanges)
{
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 22e3);
    EXPECT_THROW (session_.saveAs (folder_ / "no such folder" / "Mine.json"), Error);
    EXPECT_TRUE (session_.document().isUnsaved());
    EXPECT_EQ (value ("R5"), 22e3);
}

TEST_F (BenchSessionTest, ABadFileLeavesWhatIsOpen)
{
    std::ofstream (preset ("Bad.json")) << "{ \"stopwright\": 1, \"kind\": \"card\", ";
    EXPECT_THROW (session_.open (preset ("Bad.json")), Error);
    EXPECT_THROW (session_.open (preset ("Absent.json")), Error);
    EXPECT_EQ (session_.card().name, "Krummhorn 8");
    processor_.engine().key (60, true);
    EXPECT_GT (settledRms(), 1e-4);
}

TEST_F (BenchSessionTest, EveryStopOfTheDemonstrationOrganPlays)
{
    const auto stops = session_.document().instrument->stops;
    for (std::size_t index = 0; index < stops.size(); ++index)
    {
        if (stops[index].cardFile.empty())
            continue;
        session_.chooseStop (static_cast<int> (index));
        drawOnly (stops[index].name);
        const int division = session_.document().divisionInHand();
        processor_.engine().key (60, true, division);
        EXPECT_GT (settledRms (0.1), 1e-3) << stops[index].name;
        processor_.engine().key (60, false, division);
    }
}

TEST_F (BenchSessionTest, SaveDoesNotSilentlyReplaceWhatAnotherProgramWrote)
{
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    auto theirs = readCard (session_.document().cardFile());
    theirs.name = "Changed elsewhere";
    writeCard (theirs, session_.document().cardFile());

    EXPECT_THROW (session_.save(), Error);
    EXPECT_EQ (readCard (session_.document().cardFile()).name, "Changed elsewhere");
    EXPECT_TRUE (session_.document().isUnsaved());

    session_.save(); // told once, the second time it is meant
    EXPECT_NE (readCard (session_.document().cardFile()).name, "Changed elsewhere");
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 2e3);
    EXPECT_NO_THROW (session_.save());
}

TEST_F (BenchSessionTest, SaveWritesNothingWhenNothingIsUnsaved)
{
    auto theirs = readCard (session_.document().cardFile());
    theirs.name = "Changed elsewhere";
    writeCard (theirs, session_.document().cardFile());
    session_.save();
    EXPECT_EQ (readCard (session_.document().cardFile()).name, "Changed elsewhere");
}

} // namespace stopwright
