// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/Preamp.h"
#include "Sound/PreampChain.h"

#include <complex>
#include <functional>
#include <vector>

namespace stopwright::test
{

inline constexpr double preampRateHz = 192000.0;
inline constexpr long long preampPeriod = 19200; ///< samples: 10 Hz a cycle

PreampStage amplifier (double gain);

/// 0.7 mA in 10 k, into 4.7 k, no rails.
PreampStage follower();

PreampStage circuit();

/// 10 k in series, 10 n and 100 k to common, fed behind 4.7 k.
Card toneCard();

Preamp preampOf (std::vector<PreampStage> stages);

/// All that can be in one: amplifier with coupling, bandwidth and rails, circuit, follower.
Preamp fullPreamp();

std::vector<std::reference_wrapper<const Card>> listOf (const Card& card);

/// Out over in of a settled sine of 1 mV.
std::complex<double> responseOf (PreampChain& chain, long long cycles);

/// The same in dB.
double decibelsOf (PreampChain& chain, double frequencyHz);

} // namespace stopwright::test
