// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialPlace.h"

#include <utility>

namespace stopwright
{

TrialPlace::TrialPlace (Instrument instrument,
                        InstrumentCards cards,
                        std::string tablet,
                        std::vector<double> outletDelaySeconds)
    : instrument_ (std::move (instrument)),
      cards_ (std::move (cards)),
      tablet_ (std::move (tablet)),
      outletDelaySeconds_ (std::move (outletDelaySeconds))
{}

std::optional<TrialComparison> TrialPlace::compareUnless (const std::function<bool()>& isUnwanted,
                                                          const Card& a,
                                                          const Card& b,
                                                          const std::vector<HeldKey>& held,
                                                          const HeldKey& keyInHand)
{
    if (! levels_)
        levels_.emplace (instrument_, cards_, tablet_, outletDelaySeconds_);
    return levels_->compareUnless (isUnwanted, a, b, held, keyInHand);
}

} // namespace stopwright
