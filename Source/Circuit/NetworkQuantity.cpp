// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetworkQuantity.h"

#include <cstddef>

namespace stopwright
{

namespace
{

/// One of [x; x_dependent; u].
double known (int index,
              const StateSpace& network,
              std::span<const double> states,
              std::span<const double> sources) noexcept
{
    const int stateCount = network.stateCount();
    if (index < stateCount)
        return states[static_cast<std::size_t> (index)];

    const int row = index - stateCount;
    if (row >= network.dependentCount())
        return sources[static_cast<std::size_t> (row - network.dependentCount())];

    double sum = 0.0;
    for (int state = 0; state < stateCount; ++state)
        sum += network.dependent (row, state) * states[static_cast<std::size_t> (state)];
    for (int source = 0; source < network.sourceCount(); ++source)
        sum += network.dependent (row, stateCount + source) * sources[static_cast<std::size_t> (source)];
    return sum;
}

} // namespace

double valueOf (const StateSpaceBuilder::Quantity& quantity,
                const StateSpace& network,
                std::span<const double> states,
                std::span<const double> sources) noexcept
{
    double sum = 0.0;
    for (const auto& term : quantity.form.terms())
        sum += term.weight * known (term.index, network, states, sources);
    return sum;
}

} // namespace stopwright
