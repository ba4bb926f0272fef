// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/LockedGroup.h"
#include "Study/ResponseCurve.h"

#include <complex>
#include <functional>
#include <vector>

namespace stopwright
{

class WaveMaker;

/// The waves at one place of the instrument as spectra, one for each pitch class. Threading: [control].
class StageSpectra
{
public:
    /// Where the groups' responses lead to. `isUnwanted`, which may be empty, is asked before each group; once it says so
    /// the rest is left out.
    explicit StageSpectra (const std::vector<LockedGroup>& groups, const std::function<bool()>& isUnwanted = {});

    /// Every partial of these multiplied by the response at its frequency: the same waves further on.
    StageSpectra through (const ResponseCurve::Response& response) const;

    /// One period of each pitch class (see WaveMaker).
    std::vector<std::vector<double>> waves (WaveMaker& maker) const;

    /// Of all together, each partial of each pitch class independent of the others' phase.
    double rmsVolts() const noexcept;

private:
    std::vector<double> baseHz_;
    std::vector<std::vector<std::complex<double>>> spectra_;
};

} // namespace stopwright
