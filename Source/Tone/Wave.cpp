// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/Wave.h"

#include "Units/Error.h"

#include <cmath>
#include <string>

namespace stopwright
{

namespace
{

void require (bool holds, const std::string& sentence)
{
    if (! holds)
        throw Error (sentence);
}

std::string found (double value)
{
    return ", not " + std::to_string (value) + ".";
}

void checkStaircase (const Wave& wave)
{
    require (wave.ranks >= 1 && wave.ranks <= 8,
             "A staircase has 1 to 8 ranks, not " + std::to_string (wave.ranks) + ".");
    require (wave.weights.empty() || wave.weights.size() == static_cast<std::size_t> (wave.ranks),
             "A staircase of " + std::to_string (wave.ranks) + " ranks needs as many weights, not "
                 + std::to_string (wave.weights.size()) + ".");

    for (const double weight : wave.weights)
        require (std::abs (weight) <= 1000.0, "A weight of a staircase is between -1000 and 1000" + found (weight));
}

void checkRounded (const Wave& wave)
{
    for (const double tau : { wave.riseTau, wave.fallTau })
        require (tau > 0.0 && tau <= 1000.0,
                 "A time constant of a rounded wave is above 0 and at most 1000" + found (tau));
}

} // namespace

double Wave::rankWeight (int rank) const noexcept
{
    if (rank < 0 || rank >= ranks)
        return 0.0;

    const auto index = static_cast<std::size_t> (rank);
    if (index < weights.size())
        return weights[index];

    return weights.empty() ? std::ldexp (1.0, -rank) : 0.0;
}

void Wave::check() const
{
    switch (kind)
    {
        case WaveKind::square:
        case WaveKind::pulse:
            require (duty >= 0.001 && duty <= 0.999,
                     "The duty of a " + std::string (waveName (kind)) + " is between 0.001 and 0.999" + found (duty));
            break;
        case WaveKind::staircase:
            checkStaircase (*this);
            break;
        case WaveKind::rounded:
            checkRounded (*this);
            break;
        case WaveKind::outphased:
            require (outphaseWeight >= 0.0 && outphaseWeight <= 1.0,
                     "The weight of an outphased wave is between 0 and 1" + found (outphaseWeight));
            break;
        case WaveKind::triangle:
        case WaveKind::sawtooth:
            break;
    }
}

std::string_view waveName (WaveKind kind) noexcept
{
    switch (kind)
    {
        case WaveKind::square:
            return "square";
        case WaveKind::pulse:
            return "pulse";
        case WaveKind::staircase:
            return "staircase";
        case WaveKind::rounded:
            return "rounded";
        case WaveKind::triangle:
            return "triangle";
        case WaveKind::sawtooth:
            return "sawtooth";
        case WaveKind::outphased:
            return "outphased";
    }

    return "unknown";
}

} // namespace stopwright
