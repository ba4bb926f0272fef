// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/WaveWords.h"

#include "Organ/PlainText.h"
#include "Units/Engineering.h"

namespace stopwright
{

namespace
{

std::string roundedWords (const Wave& wave)
{
    const auto tau = [&wave] (double value)
    {
        return wave.tauUnit == TauUnit::seconds ? formatForReading (value, Quantity::time)
                                                : numberText (value) + " periods";
    };
    return " by " + tau (wave.riseTau)
           + (wave.fallTau == wave.riseTau ? "" : " up and " + tau (wave.fallTau) + " down");
}

std::string staircaseWords (const Wave& wave)
{
    auto words = " of " + std::to_string (wave.ranks) + (wave.ranks == 1 ? " rank" : " ranks");
    for (std::size_t rank = 0; rank < wave.weights.size(); ++rank)
        words.append (rank == 0 ? " weighted " : ":").append (numberText (wave.weights[rank]));
    return words;
}

std::string shapeWords (const Wave& wave)
{
    constexpr double evenDuty = 0.5;
    std::string name (waveName (wave.kind));
    switch (wave.kind)
    {
        case WaveKind::square:
            return wave.duty == evenDuty ? name : name + " of duty " + numberText (wave.duty);
        case WaveKind::pulse:
            return name + " of duty " + numberText (wave.duty);
        case WaveKind::staircase:
            return name + staircaseWords (wave);
        case WaveKind::rounded:
            return name + roundedWords (wave);
        case WaveKind::outphased:
            return name + " by " + numberText (wave.outphaseWeight);
        case WaveKind::triangle:
        case WaveKind::sawtooth:
            break;
    }
    return name;
}

} // namespace

std::string_view levelPrefix (WaveKind kind) noexcept
{
    return kind == WaveKind::staircase ? "first " : kind == WaveKind::rounded ? "from " : "";
}

std::string waveWords (const WaveSource& source)
{
    return shapeWords (source.wave) + ", " + source.footage.text() + " ft, "
           + std::string (levelPrefix (source.wave.kind)) + formatForReading (source.voltsPeakToPeak, Quantity::voltage)
           + " p-p behind " + formatForReading (source.sourceOhms, Quantity::resistance);
}

} // namespace stopwright
