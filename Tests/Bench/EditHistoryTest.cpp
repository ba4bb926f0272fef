// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/EditHistory.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

BenchWork named (const std::string& name)
{
    BenchWork work;
    work.trials[""].a.name = name;
    return work;
}

} // namespace

TEST (EditHistory, GoesBackAndForth)
{
    EditHistory history;
    EXPECT_FALSE (history.canUndo());
    history.add (named ("a"), named ("b"), "to b");
    history.add (named ("b"), named ("c"), "to c");
    EXPECT_EQ (history.undoName(), "to c");
    EXPECT_EQ (history.undo().card().name, "b");
    EXPECT_EQ (history.undo().card().name, "a");
    EXPECT_FALSE (history.canUndo());
    EXPECT_EQ (history.redoName(), "to b");
    EXPECT_EQ (history.redo().card().name, "b");
}

TEST (EditHistory, ANewStepForgetsWhatWasUndone)
{
    EditHistory history;
    history.add (named ("a"), named ("b"), "to b");
    history.undo();
    history.add (named ("a"), named ("c"), "to c");
    EXPECT_FALSE (history.canRedo());
    EXPECT_EQ (history.undo().card().name, "a");
}

TEST (EditHistory, MergesOnlyTheSameGesture)
{
    EditHistory history;
    history.add (named ("a"), named ("b"), "to b", "R1#1");
    history.add (named ("b"), named ("c"), "to c", "R1#1");
    EXPECT_EQ (history.undo().card().name, "a");
    EXPECT_EQ (history.redo().card().name, "c");
    history.add (named ("c"), named ("d"), "to d", "R1#2");
    EXPECT_EQ (history.undo().card().name, "c");
}

TEST (EditHistory, KeepsALimitedNumberOfSteps)
{
    EditHistory history;
    for (std::size_t step = 0; step < EditHistory::maxSteps + 10; ++step)
        history.add (named (std::to_string (step)), named (std::to_string (step + 1)), "step");
    std::size_t undone = 0;
    std::string last;
    while (history.canUndo())
    {
        last = history.undo().card().name;
        ++undone;
    }
    EXPECT_EQ (undone, EditHistory::maxSteps);
    EXPECT_EQ (last, "10");
}

} // namespace stopwright
