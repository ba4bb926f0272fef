// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/RowPlan.h"

#include <limits>
#include <vector>

namespace stopwright
{

/// A choice of rows, counted downward, and of which op-amps are flipped; an entry for each item of a plan.
struct RowChoice
{
    std::vector<int> rows;
    std::vector<bool> isFlipped;
};

/// What is ugly about a choice of rows: parts on the same spot, nodes that get in each other's way, wires that cross,
/// long upright wires, many rows. The less the better. Threading: one thread at a time.
class RowCost
{
public:
    explicit RowCost (const RowPlan& plan);

    /// Once it has reached the limit it is not summed to the end.
    long of (const RowChoice& choice, long limit = std::numeric_limits<long>::max());

    /// The lowest and highest row of a node in the choice that was judged last, its hangers' rows left out.
    int highestRow (int node) const;
    int lowestRow (int node) const;

private:
    /// What a node takes of its upright, in hundredths of a row.
    struct Span
    {
        int node = 0;
        int place = 0;
        int hangersBelow = 0;
        int hangersAbove = 0;
        int top = 0;
        int bottom = 0;
        int highestRow = 0;
        int lowestRow = 0;
    };

    void pairUp();
    void measure (const RowChoice& choice);
    long costOfItems (const RowChoice& choice, long limit) const;
    long costOfOutput (const RowChoice& choice, const RowItem& output, int row) const;
    long costOfEnds (const RowChoice& choice) const;
    long costOfArms (const RowItem& item, int row, bool isFlipped) const;
    long costOfNodes() const;
    long costOfHangers (const RowChoice& choice) const;
    long costOfHanger (const RowChoice& choice, const Span& span, int row) const;
    long costOfHeight() const;

    const RowPlan& plan_;

    /// A device, and an item on the node of its lead that leaves upward or downward.
    struct EndPair
    {
        std::size_t device = 0;
        std::size_t item = 0;
        bool isAbove = false;
    };

    std::vector<Span> spans_;
    std::vector<EndPair> endPairs_;
    std::vector<EndPair> feedbackPairs_; ///< an amplifier, and a part from its output to an input
    std::vector<int> spanOfNode_;
};

} // namespace stopwright
