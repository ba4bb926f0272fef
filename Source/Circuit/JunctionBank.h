// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Junction.h"
#include "Circuit/JunctionLaw.h"

#include <string>
#include <vector>

namespace stopwright
{

/// All junctions of a network, in the order of junctionsOf. Needs values in order.
/// Threading: construct and look up on [control], evaluate and limited on [audio].
class JunctionBank
{
public:
    explicit JunctionBank (const Netlist& netlist);

    int count() const noexcept { return static_cast<int> (names_.size()); }

    /// "D1", "Q1.be", "Q1.bc", and the part each belongs to.
    const std::vector<std::string>& names() const noexcept { return names_; }

    const std::string& partOf (int junction) const { return parts_[static_cast<std::size_t> (junction)]; }

    /// The other junction of the same transistor, or -1.
    int partnerOf (int junction) const noexcept { return partners_[static_cast<std::size_t> (junction)]; }

    /// Amps beyond junctionSiemens v that each junction carries, and how they follow the volts (the slopes' `own` is
    /// less by junctionSiemens too). Arrays of count().
    void evaluate (const double* volts, double* excessAmps, JunctionSlope* slopes) const noexcept;

    const JunctionLaw& lawOf (int junction) const noexcept
    {
        return laws_[static_cast<std::size_t> (lawOf_[static_cast<std::size_t> (junction)])];
    }

private:
    std::vector<JunctionLaw> laws_;
    std::vector<int> lawOf_, partners_;
    std::vector<std::string> names_, parts_;
};

} // namespace stopwright
