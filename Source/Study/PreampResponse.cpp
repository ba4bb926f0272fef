// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/PreampResponse.h"

#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// 1 / (1 + j f / corner).
Complex lowpass (double cornerHz, double frequencyHz)
{
    return 1.0 / Complex { 1.0, frequencyHz / cornerHz };
}

Complex couplingGain (const Coupling& coupling, double frequencyHz)
{
    const double cornerHz = 1.0 / (2.0 * std::numbers::pi * coupling.farads * coupling.inputOhms);
    return 1.0 - lowpass (cornerHz, frequencyHz);
}

} // namespace

PreampResponse::PreampResponse (const Preamp& preamp, const std::vector<std::optional<Card>>& cards)
{
    for (std::size_t index = 0; index < preamp.stages.size(); ++index)
    {
        const PreampStage& stage = preamp.stages[index];
        stages_.push_back ({ stage, std::nullopt });
        if (stage.kind != StageKind::circuit)
            continue;
        if (index >= cards.size() || ! cards[index])
            throw Error ("The stage \"" + stage.name + "\" of the preamp \"" + preamp.name
                         + "\" has no card with its network; name one that can be read.");
        stages_.back().circuit.emplace (netlistOf (*cards[index]), cards[index]->output);
    }
}

Complex PreampResponse::gainOf (const Stage& stage, double frequencyHz)
{
    const PreampStage& values = stage.values;
    Complex gain = values.coupling ? couplingGain (*values.coupling, frequencyHz) : Complex (1.0);
    if (stage.circuit)
        return gain * stage.circuit->at (frequencyHz).front();
    if (values.kind == StageKind::amplifier)
        gain *= values.gain;
    if (values.kind == StageKind::amplifier && values.gainBandwidthHz)
        gain *= lowpass (*values.gainBandwidthHz / noiseGainOf (values), frequencyHz);
    return gain;
}

Complex PreampResponse::upTo (std::size_t stageEnd, double frequencyHz) const
{
    Complex gain = 1.0;
    for (std::size_t stage = 0; stage < std::min (stageEnd, stages_.size()); ++stage)
        gain *= gainOf (stages_[stage], frequencyHz);
    return gain;
}

} // namespace stopwright
