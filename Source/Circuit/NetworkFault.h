// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace stopwright
{

/// Why a netlist whose names and values are in order cannot be brought into state-space form.
struct NetworkFault
{
    enum class Kind
    {
        none,
        sourceTied,           ///< a source without resistance whose node is fixed already
        outputTied,           ///< an op-amp output whose node is fixed already
        opAmpWithoutFeedback, ///< nothing decides where the op-amp's output stands
        floating,             ///< nothing decides the voltage of these nodes
        outputFollowsRate,    ///< an output that follows the rate of change of a source (ideal differentiator)
        unsolvable,           ///< rates of change of rates of change, or feedback that cancels out
        valuesTooFarApart     ///< solvable in principle, but these values cancel or drown in rounding
    };

    Kind kind = Kind::none;

    /// The source, op-amp, part or first node at fault.
    std::string subject;

    /// All nodes that float together, or what already fixes the node ("0" for common, else a source or op-amp).
    std::vector<std::string> others;

    explicit operator bool() const noexcept { return kind != Kind::none; }
};

/// The fault in one sentence that names the part or node and says what to do; empty for Kind::none.
std::string sentenceFor (const NetworkFault& fault);

} // namespace stopwright
