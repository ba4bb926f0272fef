// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// One thing in which two cards of the same stop differ. Values as they stand on a part or a drawing.
struct TrialDifference
{
    enum class Kind
    {
        changed, ///< stands in both
        missing, ///< a part or tap that only one of them has; the other's text is empty
        output   ///< the node that goes to the bus
    };

    Kind kind = Kind::changed;
    std::string
        name; ///< of part or tap, and which of its numbers where that is not the value: "C1", "L1 winding resistance"
    std::string inA; ///< "6n8"
    std::string inB; ///< "8n2"

    /// "C1 6n8 / 8n2", "R7 only in A", "output moved from t to m". Threading: [control].
    std::string words() const;

    bool operator== (const TrialDifference&) const = default;
};

/// Everything that is not the same in the networks and taps of `a` and `b`, known by their names: taps first, then parts,
/// each in the order of `a` with what only `b` has behind them, then the output. The two leads of a part that has no
/// direction may be swapped; names and notes of the cards are not compared. Threading: [control].
std::vector<TrialDifference> trialDifferences (const Card& a, const Card& b);

/// All of them in a line, "C1 6n8 / 8n2; R7 only in A"; "no difference" when there is none. Threading: [control].
std::string differenceWords (std::span<const TrialDifference> differences);

} // namespace stopwright
