// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetworkEquations.h"

#include <algorithm>

namespace stopwright
{

namespace
{

std::size_t at (int index) noexcept
{
    return static_cast<std::size_t> (index);
}

int sizeOf (const auto& list) noexcept
{
    return static_cast<int> (list.size());
}

std::vector<bool> touchedNodes (const NetworkBranches& branches)
{
    std::vector<bool> touched (at (branches.nodeCount), false);
    for (const auto* list : { &branches.conductances, &branches.capacitors, &branches.inductors })
        for (const auto& branch : *list)
            touched[at (branch.a)] = touched[at (branch.b)] = true;
    for (const auto& amplifier : branches.amplifiers)
        touched[at (amplifier.plus)] = touched[at (amplifier.minus)] = touched[at (amplifier.out)] = true;
    for (const auto& source : branches.sources)
        touched[at (source.node)] = touched[at (source.other)] = true;
    for (const auto& port : branches.ports)
        touched[at (port.from)] = touched[at (port.to)] = true;
    return touched;
}

} // namespace

NetworkEquations::NetworkEquations (const NetworkBranches& branches, const std::vector<std::string>& outputNodes)
    : sourceCount_ (sizeOf (branches.sources)),
      outputCount_ (sizeOf (outputNodes)),
      portCount_ (sizeOf (branches.ports))
{
    VoltageForest forest (branches.nodeCount);
    growForest (branches, forest);
    if (fault_)
        return;
    numberColumns (branches, forest);
    addConductances (branches);
    addCapacitors (branches);
    addInductors (branches);
    addAmplifiers (branches);
    addOutputs (branches, outputNodes);
    addPorts (branches);
}

// Forest branches are numbered: sources, op-amps with a bandwidth (by amplifier index), capacitors.
void NetworkEquations::growForest (const NetworkBranches& branches, VoltageForest& forest)
{
    joinFixed (branches, forest);
    if (fault_)
        return;
    checkIdealOutputs (branches, forest);

    const int firstCapacitor = sourceCount_ + sizeOf (branches.amplifiers);
    for (int index = 0; index < sizeOf (branches.capacitors); ++index)
    {
        const auto& capacitor = branches.capacitors[at (index)];
        const bool isTree = forest.join (capacitor.a, capacitor.b, firstCapacitor + index);
        (isTree ? treeCapacitors_ : linkCapacitors_).push_back (index);
    }
}

void NetworkEquations::joinFixed (const NetworkBranches& branches, VoltageForest& forest)
{
    for (int index = 0; index < sourceCount_; ++index)
    {
        const auto& source = branches.sources[at (index)];
        if (! forest.join (source.node, source.other, index) && ! fault_)
            fault_ = { NetworkFault::Kind::sourceTied, source.name,
                       fixedBy (branches, forest.potential (source.node)) };
    }
    for (int index = 0; index < sizeOf (branches.amplifiers); ++index)
    {
        const auto& amplifier = branches.amplifiers[at (index)];
        if (amplifier.hasBandwidth && ! forest.join (amplifier.out, 0, sourceCount_ + index) && ! fault_)
            fault_ = { NetworkFault::Kind::outputTied, amplifier.name,
                       fixedBy (branches, forest.potential (amplifier.out)) };
    }
}

void NetworkEquations::checkIdealOutputs (const NetworkBranches& branches, const VoltageForest& forest)
{
    std::vector<const NetworkBranches::Amplifier*> seen;
    for (const auto& amplifier : branches.amplifiers)
    {
        if (amplifier.hasBandwidth)
            continue;
        std::vector<std::string> others;
        if (forest.root (amplifier.out) == 0)
            others = fixedBy (branches, forest.potential (amplifier.out));
        for (const auto* other : seen)
            if (other->out == amplifier.out)
                others.push_back (other->name);
        if (! others.empty() && ! fault_)
            fault_ = { NetworkFault::Kind::outputTied, amplifier.name, others };
        seen.push_back (&amplifier);
    }
}

std::vector<std::string> NetworkEquations::fixedBy (const NetworkBranches& branches, const LinearForm& potential) const
{
    if (potential.isZero())
        return { std::string (commonNode) };
    std::vector<std::string> names;
    for (const auto& term : potential.terms())
        names.push_back (term.index < sourceCount_ ? branches.sources[at (term.index)].name
                                                   : branches.amplifiers[at (term.index - sourceCount_)].name);
    return names;
}

void NetworkEquations::numberColumns (const NetworkBranches& branches, const VoltageForest& forest)
{
    const auto touched = touchedNodes (branches);
    std::vector<int> columnOfRoot (at (branches.nodeCount), -1);
    for (int node = 1; node < branches.nodeCount; ++node)
    {
        const int root = forest.root (node);
        if (root == 0 || ! touched[at (node)])
            continue;
        if (columnOfRoot[at (root)] < 0)
        {
            columnOfRoot[at (root)] = treeCount_++;
            owners_.emplace_back();
        }
        owners_[at (columnOfRoot[at (root)])].push_back (branches.nodeNames[at (node)]);
    }

    std::vector<int> bandwidthAmplifiers;
    for (int index = 0; index < sizeOf (branches.amplifiers); ++index)
    {
        if (branches.amplifiers[at (index)].hasBandwidth)
            bandwidthAmplifiers.push_back (index);
        else
            owners_.push_back ({ branches.amplifiers[at (index)].name });
    }
    idealCount_ = sizeOf (owners_) - treeCount_;
    firstCapacitorColumn_ = unknownCount() + sizeOf (bandwidthAmplifiers);
    firstInductorColumn_ = firstCapacitorColumn_ + sizeOf (treeCapacitors_);
    stateCount_ = firstInductorColumn_ + sizeOf (branches.inductors) - unknownCount();

    const int firstAmplifierBranch = sourceCount_;
    const int firstCapacitorBranch = sourceCount_ + sizeOf (branches.amplifiers);
    columnOfBranch_.assign (at (firstCapacitorBranch + sizeOf (branches.capacitors)), -1);
    for (int index = 0; index < sourceCount_; ++index)
        columnOfBranch_[at (index)] = firstSourceColumn() + index;
    for (int index = 0; index < sizeOf (bandwidthAmplifiers); ++index)
        columnOfBranch_[at (firstAmplifierBranch + bandwidthAmplifiers[at (index)])] = unknownCount() + index;
    for (int index = 0; index < sizeOf (treeCapacitors_); ++index)
        columnOfBranch_[at (firstCapacitorBranch + treeCapacitors_[at (index)])] = firstCapacitorColumn_ + index;

    for (int node = 0; node < branches.nodeCount; ++node)
    {
        nodes_.push_back (columnsOf (forest.potential (node)));
        if (const int column = columnOfRoot[at (forest.root (node))]; column >= 0)
            nodes_.back().add (column, 1.0);
    }
}

LinearForm NetworkEquations::columnsOf (const LinearForm& potential) const
{
    LinearForm form;
    for (const auto& term : potential.terms())
        form.add (columnOfBranch_[at (term.index)], term.weight);
    return form;
}

} // namespace stopwright
