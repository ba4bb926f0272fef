// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/SweptResponse.h"
#include "Organ/Card.h"
#include "Organ/Preamp.h"

#include <complex>
#include <optional>
#include <vector>

namespace stopwright
{

/// What the stages of a preamp do to small signals, one after the other. Rails are not in it.
/// Threading: [control].
class PreampResponse
{
public:
    /// `cards` as InstrumentCards::ofStages has them. Fails: Error on a circuit stage without a sound card.
    PreampResponse (const Preamp& preamp, const std::vector<std::optional<Card>>& cards);

    std::size_t stageCount() const noexcept { return stages_.size(); }

    /// Complex gain from the bus to the output of stages 0 .. stageEnd - 1 together. Range: frequencyHz > 0.
    std::complex<double> upTo (std::size_t stageEnd, double frequencyHz) const;

    std::complex<double> at (double frequencyHz) const { return upTo (stages_.size(), frequencyHz); }

private:
    struct Stage
    {
        PreampStage values;
        std::optional<SweptResponse> circuit;
    };

    static std::complex<double> gainOf (const Stage& stage, double frequencyHz);

    std::vector<Stage> stages_;
};

} // namespace stopwright
