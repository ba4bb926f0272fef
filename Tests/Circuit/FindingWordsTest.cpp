// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingWords.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

TEST (FindingWords, PlainNamesStandAsTheyAreAndOthersAreQuoted)
{
    EXPECT_EQ (partWords ("R1"), "R1");
    EXPECT_EQ (partWords (""), "\"\"");
    EXPECT_EQ (partWords ("mixing resistor"), "\"mixing resistor\"");
    EXPECT_EQ (partWords ("R\n1"), "\"R?1\"");
    EXPECT_EQ (nodeWords ("t"), "node \"t\"");
    EXPECT_EQ (nodeWords ("0"), "circuit common");
}

TEST (FindingWords, ListsReadAsASentenceDoes)
{
    EXPECT_EQ (partsWords ({}), "");
    EXPECT_EQ (partsWords ({ "U1" }), "U1");
    EXPECT_EQ (partsWords ({ "U1", "U2" }), "U1 and U2");
    EXPECT_EQ (partsWords ({ "U1", "U2", "U3", "U4" }), "U1, U2, U3 and U4");
    EXPECT_EQ (partsWords ({ "U1", "U2", "U3", "U4", "U5", "U6" }), "U1, U2, U3 and 3 more");
    EXPECT_EQ (nodesWords ({ "a" }), "node \"a\"");
    EXPECT_EQ (capitalised (nodesWords ({ "a", "b" })), "Nodes \"a\" and \"b\"");
}

} // namespace
} // namespace stopwright
