// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StageSpectra.h"

#include "Study/WaveMaker.h"

#include <cmath>

namespace stopwright
{

StageSpectra::StageSpectra (const std::vector<LockedGroup>& groups, const std::function<bool()>& isUnwanted)
{
    baseHz_.reserve (groups.size());
    spectra_.reserve (groups.size());
    for (const LockedGroup& group : groups)
    {
        if (isUnwanted && isUnwanted())
            return;
        baseHz_.push_back (group.baseHz);
        spectra_.push_back (group.spectrum());
    }
}

StageSpectra StageSpectra::through (const ResponseCurve::Response& response) const
{
    const ResponseCurve curve (response);
    StageSpectra behind = *this;
    std::vector<std::complex<double>> gains;
    for (std::size_t group = 0; group < spectra_.size(); ++group)
    {
        gains.resize (spectra_[group].size());
        curve.fill (baseHz_[group], gains);
        for (std::size_t bin = 0; bin < gains.size(); ++bin)
            behind.spectra_[group][bin] *= gains[bin];
    }
    return behind;
}

std::vector<std::vector<double>> StageSpectra::waves (WaveMaker& maker) const
{
    std::vector<std::vector<double>> waves;
    waves.reserve (spectra_.size());
    for (const auto& spectrum : spectra_)
        waves.push_back (maker.waveOf (spectrum));
    return waves;
}

double StageSpectra::rmsVolts() const noexcept
{
    double power = 0.0;
    for (const auto& spectrum : spectra_)
        power += std::pow (rmsOf (spectrum), 2);
    return std::sqrt (power);
}

} // namespace stopwright
