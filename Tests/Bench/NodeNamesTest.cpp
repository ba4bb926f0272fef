// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/NodeNames.h"

#include <gtest/gtest.h>

#include <set>

namespace stopwright
{

namespace
{

/// What `node` is called on a card that has these nodes.
std::string on (const NodeNames& names, const std::string& node, const std::set<std::string>& nodes)
{
    return names.presentName (node, [&] (const std::string& name) { return nodes.contains (name); });
}

} // namespace

TEST (NodeNames, FollowARenamingAndItsWayBack)
{
    NodeNames names;
    EXPECT_EQ (on (names, "t", { "in", "t" }), "t");
    EXPECT_EQ (on (names, "t", { "in" }), "");
    names.noteRenaming ("t", "treble");
    EXPECT_EQ (on (names, "t", { "in", "treble" }), "treble"); // done, and done again
    EXPECT_EQ (on (names, "treble", { "in", "t" }), "t");      // undone
    EXPECT_EQ (on (names, "treble", { "in" }), "");            // the node itself is gone
    EXPECT_EQ (on (names, "m", { "in", "treble" }), "");       // another that is gone
}

TEST (NodeNames, FollowSeveralRenamingsAtOnce)
{
    NodeNames names; // as when the other trial is taken in hand
    names.noteRenaming ("t", "u");
    names.noteRenaming ("m", "n");
    names.noteRenaming ("u", "v");
    EXPECT_EQ (on (names, "t", { "m", "v" }), "v");
    EXPECT_EQ (on (names, "v", { "m", "t" }), "t");
    EXPECT_EQ (on (names, "v", { "m", "u" }), "u");
    EXPECT_EQ (on (names, "n", { "m", "t" }), "m");
}

TEST (NodeNames, ANameThatIsThereStays)
{
    NodeNames names; // "t" was renamed, and another node took its name
    names.noteRenaming ("t", "treble");
    names.noteRenaming ("m", "t");
    EXPECT_EQ (on (names, "treble", { "treble", "t" }), "treble");
    EXPECT_EQ (on (names, "t", { "treble", "t" }), "t");
    EXPECT_EQ (on (names, "t", { "treble", "m" }), "m");
    names.forget();
    EXPECT_EQ (on (names, "t", { "treble", "m" }), "");
}

} // namespace stopwright
