// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/MixingBus.h"

#include <complex>

namespace stopwright
{

/// Siemens that a mixing bus has of itself: a passive one's load and loom; a virtual earth none. Range: frequencyHz > 0.
/// Threading: [any], like all of these.
std::complex<double> ownSiemens (const MixingBus& bus, double frequencyHz) noexcept;

/// Volts heard of a bus per ampere that flows into it at zero volts, with `siemens` of stops and load on it.
/// Range: frequencyHz > 0; a passive bus needs siemens other than 0.
std::complex<double> busOhmsAt (const MixingBus& bus, std::complex<double> siemens, double frequencyHz) noexcept;

/// Whether what is on a bus changes what is heard of it: not so on an ideal virtual earth.
bool feels (const MixingBus& bus) noexcept;

} // namespace stopwright
