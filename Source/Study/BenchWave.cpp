// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BenchWave.h"

#include "Study/LockedGroup.h"
#include "Study/WaveMaker.h"
#include "Units/Pitch.h"

#include <memory>

namespace stopwright
{

BenchWave benchWave (const BenchPoint& point, int key, const std::optional<ProbeLoad>& load)
{
    static_cast<void> (keyName (key)); // refuses keys there are not
    std::vector<std::unique_ptr<ResponseCurve>> curves;
    std::vector<SoundingWave> sounding;
    for (std::size_t index = 0; index < point.card().taps.size(); ++index)
    {
        const Tap& tap = point.card().taps[index];
        const auto generator = point.keySource().tuning.generatorFor (key, tap.footage);
        if (! generator)
            continue;
        curves.push_back (std::make_unique<ResponseCurve> (
            [&, index] (double hz)
            {
                const auto& node = point.at (hz);
                return load ? node.tapGains[index] * load->ratio (node.ohms, hz) : node.tapGains[index];
            }));
        sounding.push_back ({ tap.wave, *generator, &point.keySource().tuning,
                              tap.voltsPeakToPeak * tap.polarity * point.polarity(), curves.back().get() });
    }
    BenchWave result;
    WaveMaker maker;
    for (const LockedGroup& group : lockedGroups (sounding))
    {
        result.baseHz.push_back (group.baseHz);
        result.waves.push_back (maker.waveOf (group.spectrum()));
    }
    return result;
}

} // namespace stopwright
