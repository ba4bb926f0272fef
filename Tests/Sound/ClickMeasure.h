// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>

namespace stopwright::test
{

/// What lies above 6 kHz re the peak of it all, in dB: what a click leaves where a low tone has nothing. The samples less
/// their low-passed selves; the ends, where the filter is not full, are left out.
double residueAboveSixKilohertz (std::span<const double> samples, double rateHz);

} // namespace stopwright::test
