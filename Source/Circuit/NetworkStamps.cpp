// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of NetworkEquations that writes the parts into the tables.
#include "Circuit/NetworkEquations.h"

namespace stopwright
{

namespace
{

constexpr int constant = -1;

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

LinearForm unit (int column)
{
    LinearForm form;
    form.add (column, 1.0);
    return form;
}

} // namespace

int NetworkEquations::addElement (const BranchValue& value)
{
    elements_.push_back (value);
    return static_cast<int> (elements_.size()) - 1;
}

LinearForm NetworkEquations::across (int a, int b) const
{
    return difference (nodes_[at (a)], nodes_[at (b)]);
}

bool NetworkEquations::isTreeCapacitor (int column) const noexcept
{
    return column >= firstCapacitorColumn_ && column < firstInductorColumn_;
}

void NetworkEquations::addRow (int row, const LinearForm& form, double weight, int element)
{
    for (const auto& term : form.terms())
        stamps_.push_back ({ element, row, term.index, weight * term.weight, false });
}

// A current that flows through a branch with the voltage `through` leaves the trees as the transposed map says; what
// it takes out of a capacitor's row charges that capacitor. Fixed branches (sources, op-amp outputs) take any current.
void NetworkEquations::addCurrent (const LinearForm& through, int column, double weight, int element)
{
    for (const auto& term : through.terms())
    {
        if (term.index < treeCount_)
            stamps_.push_back ({ element, term.index, column, weight * term.weight, false });
        else if (isTreeCapacitor (term.index))
            stamps_.push_back ({ element, term.index, column, -weight * term.weight, false });
    }
}

void NetworkEquations::addConductances (const NetworkBranches& branches)
{
    for (const auto& branch : branches.conductances)
    {
        const int element = addElement (branch.value);
        const auto voltage = across (branch.a, branch.b);
        for (const auto& term : voltage.terms())
            addCurrent (voltage, term.index, term.weight, element);
    }
}

void NetworkEquations::addCapacitors (const NetworkBranches& branches)
{
    const int firstState = unknownCount();
    for (const auto* list : { &treeCapacitors_, &linkCapacitors_ })
        for (const int index : *list)
        {
            const auto& capacitor = branches.capacitors[at (index)];
            const int element = addElement (capacitor.value);
            const auto voltage = across (capacitor.a, capacitor.b);
            for (const auto& rowTerm : voltage.terms())
                for (const auto& columnTerm : voltage.terms())
                    if (isTreeCapacitor (rowTerm.index))
                        stamps_.push_back ({ element, rowTerm.index - firstState, columnTerm.index - firstState,
                                             rowTerm.weight * columnTerm.weight, true });
            quantities_.push_back ({ capacitor.name, capacitor.value, voltage });
        }
}

void NetworkEquations::addInductors (const NetworkBranches& branches)
{
    const auto firstLink = quantities_.begin() + static_cast<std::ptrdiff_t> (treeCapacitors_.size());
    std::vector<Quantity> coils;
    int column = firstInductorColumn_;
    for (const auto& inductor : branches.inductors)
    {
        const int state = column - unknownCount();
        const auto voltage = across (inductor.a, inductor.b);
        stamps_.push_back ({ addElement (inductor.value), state, state, 1.0, true });
        addRow (column, voltage, 1.0, constant);
        stamps_.push_back ({ addElement (inductor.winding), column, column, -1.0, false });
        addCurrent (voltage, column, 1.0, constant);
        coils.push_back ({ inductor.name, inductor.value, unit (column) });
        ++column;
    }
    quantities_.insert (firstLink, coils.begin(), coils.end());
}

void NetworkEquations::addAmplifiers (const NetworkBranches& branches)
{
    std::vector<Quantity> outputs;
    int current = treeCount_;
    int column = unknownCount();
    for (const auto& amplifier : branches.amplifiers)
    {
        const auto input = across (amplifier.plus, amplifier.minus);
        if (! amplifier.hasBandwidth)
        {
            addRow (current, input, 1.0, constant);
            addRow (current, nodes_[at (amplifier.out)], -amplifier.inverseGain, constant);
            addCurrent (nodes_[at (amplifier.out)], current, 1.0, constant);
            ++current;
            continue;
        }
        const int state = column - unknownCount();
        const int element = addElement (amplifier.bandwidth);
        stamps_.push_back ({ constant, state, state, 1.0, true });
        addRow (column, input, 1.0, element);
        stamps_.push_back ({ element, column, column, -amplifier.inverseGain, false });
        outputs.push_back ({ amplifier.name, {}, unit (column) });
        ++column;
    }
    quantities_.insert (quantities_.begin(), outputs.begin(), outputs.end());
}

void NetworkEquations::addPorts (const NetworkBranches& branches)
{
    int column = firstSourceColumn() + sourceCount_;
    int row = firstSourceColumn() + outputCount_;
    for (const auto& port : branches.ports)
    {
        const auto voltage = across (port.from, port.to);
        addCurrent (voltage, column++, 1.0, constant);
        addRow (row++, voltage, 1.0, constant);
    }
}

void NetworkEquations::addOutputs (const NetworkBranches& branches, const std::vector<std::string>& outputNodes)
{
    int row = firstSourceColumn();
    for (const auto& name : outputNodes)
    {
        const int node = branches.findNode (name);
        if (node > 0)
            addRow (row, nodes_[at (node)], 1.0, constant);
        ++row;
    }
}

} // namespace stopwright
