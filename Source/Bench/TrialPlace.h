// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/TrialLevels.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// The instrument round the two trials of a stop, as it sounds. What is worked out once for all comparisons is worked out
/// at the first. Threading: one thread at a time.
class TrialPlace
{
public:
    TrialPlace (Instrument instrument,
                InstrumentCards cards,
                std::string tablet,
                std::vector<double> outletDelaySeconds);

    /// As TrialLevels::compareUnless, with the constructor's errors too.
    std::optional<TrialComparison> compareUnless (const std::function<bool()>& isUnwanted,
                                                  const Card& a,
                                                  const Card& b,
                                                  const std::vector<HeldKey>& held,
                                                  const HeldKey& keyInHand);

private:
    Instrument instrument_;
    InstrumentCards cards_;
    std::string tablet_;
    std::vector<double> outletDelaySeconds_;
    std::optional<TrialLevels> levels_;
};

} // namespace stopwright
