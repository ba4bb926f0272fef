// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Circuit/PartKnob.h"
#include "Circuit/ValueLimits.h"

#include <optional>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Every number of a netlist that can be turned while it sounds, in the netlist's order (parts, then sources).
///
/// A number that is absent (no leak, no self-capacitance, an ideal op-amp's bandwidth, an ideal source's resistance)
/// is not in the table, and one that is there cannot be turned into absence: either changes the topology.
/// Threading: [control]; numbers are SI.
class KnobTable
{
public:
    struct Entry
    {
        PartKnob knob;
        double value = 0.0;
        ValueRange range;
    };

    explicit KnobTable (const Netlist& netlist);

    int size() const noexcept { return static_cast<int> (entries_.size()); }

    const Entry& at (int index) const { return entries_[static_cast<std::size_t> (index)]; }

    std::optional<int> find (std::string_view part, KnobKind kind) const;

    /// Index of an entry that is known to be there, or -1.
    int indexOf (std::string_view part, KnobKind kind) const { return find (part, kind).value_or (-1); }

    std::vector<double> values() const;

private:
    void add (const std::string& part, KnobKind kind, double value, const ValueRange& range);
    void addPart (const Part& part);

    std::vector<Entry> entries_;
};

} // namespace stopwright
