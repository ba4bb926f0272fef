// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/FollowedNode.h"

#include "Organ/CardEdit.h"
#include "Sheet/SheetCards.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

/// What `node` of one card is called on the other.
std::string followed (const Card& from, const Card& to, const std::string& node)
{
    return followedNode (layOutSchematic (from), layOutSchematic (to), node);
}

/// Nodes n0 to n4: R0 from n0 to n1, C1 from n1 to common, R2 from n1 to n2 ...
Card ladder()
{
    return ladderCard (8);
}

} // namespace

TEST (FollowedNode, FindsARenamedNodeAndItsWayBack)
{
    const auto renamed = renameNode (ladder(), "n1", "treble");
    EXPECT_EQ (followed (ladder(), renamed, "n1"), "treble");
    EXPECT_EQ (followed (renamed, ladder(), "treble"), "n1");
    EXPECT_EQ (followed (renamed, renamed, "treble"), "treble");
    EXPECT_EQ (followed (ladder(), renamed, "n2"), "n2");
    EXPECT_EQ (followed (ladder(), renamed, "nowhere"), "");
}

/// As when another trial is taken in hand that was begun before both renamings.
TEST (FollowedNode, IsNotMisledByANameThatAnotherNodeTook)
{
    const auto both = renameNode (renameNode (ladder(), "n1", "treble"), "n2", "n1");
    EXPECT_EQ (followed (both, ladder(), "n1"), "n2");
    EXPECT_EQ (followed (both, ladder(), "treble"), "n1");
    EXPECT_EQ (followed (ladder(), both, "n1"), "treble");
    EXPECT_EQ (followed (ladder(), both, "n2"), "n1");
    auto exchanged = renameNode (both, "treble", "n2");
    EXPECT_EQ (followed (ladder(), exchanged, "n1"), "n2");
    EXPECT_EQ (followed (ladder(), exchanged, "n2"), "n1");
}

TEST (FollowedNode, KeepsItsNameWhilePartsComeAndGo)
{
    auto other = ladder();
    std::erase_if (other.parts, [] (const Part& part) { return part.name == "R0" || part.name == "C1"; });
    EXPECT_EQ (followed (ladder(), other, "n1"), "n1");
    std::erase_if (other.parts, [] (const Part& part) { return part.name == "R2"; });
    EXPECT_EQ (followed (ladder(), other, "n1"), "") << "nothing is left of it";
    auto moved = ladder();
    moved.parts[2].nodes[0] = "n3"; // R2, one of three leads
    EXPECT_EQ (followed (ladder(), moved, "n1"), "n1");
    auto joined = ladder();
    for (auto& part : joined.parts)
        for (auto& node : part.nodes)
            node = node == "n1" ? "n2" : node;
    EXPECT_EQ (followed (ladder(), joined, "n1"), "n2") << "it is part of that one now";
}

} // namespace stopwright
