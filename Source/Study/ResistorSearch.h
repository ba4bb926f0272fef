// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>

namespace stopwright
{

/// What a mixing resistor is looked for among: small resistors as they are sold everywhere. Common practice, no source.
inline constexpr double lowestSoldOhms = 10.0;
inline constexpr double highestSoldOhms = 10e6;

/// The resistor at which a level that falls as the resistor grows has come down to nothing, or nothing when it lies on
/// one side of that from the lowest to the highest. False position in the logarithm, bisection where that is slow; to 1e-12 dB or the last digits.
/// Threading: [control]. Source: Dowell and Jarratt, "A modified regula falsi method", 1971; from memory.
std::optional<double> resistorWhereZero (const std::function<double (double ohms)>& levelDb);

/// The resistor at which a cost is least, to about 1e-8 relative: a scan of the logarithm, then golden sections around
/// the least of it. Nothing when the least lies at an end.
/// Threading: [control]. Source: Kiefer, "Sequential minimax search for a maximum", 1953; from memory.
std::optional<double> resistorWhereLeast (const std::function<double (double ohms)>& cost);

} // namespace stopwright
