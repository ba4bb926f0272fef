// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomStudy.h"

#include "Study/AmplitudeDistribution.h"
#include "Study/BusWaves.h"
#include "Study/HeadroomRemedies.h"
#include "Study/PreampResponse.h"
#include "Study/WaveMaker.h"
#include "Units/Decibels.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <memory>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

StageRole roleOf (StageKind kind)
{
    if (kind == StageKind::circuit)
        return StageRole::circuit;
    return kind == StageKind::follower ? StageRole::follower : StageRole::amplifier;
}

/// The spectra of a bus behind the first stages of a preamp, one for each pitch class.
std::vector<std::vector<Complex>> behind (const std::vector<LockedGroup>& groups,
                                          const std::vector<std::vector<Complex>>& spectra,
                                          const PreampResponse& preamp,
                                          std::size_t stageEnd)
{
    const ResponseCurve curve ([&] (double hz) { return preamp.upTo (stageEnd, hz); });
    auto behind = spectra;
    std::vector<Complex> gains;
    for (std::size_t group = 0; group < groups.size(); ++group)
    {
        gains.resize (spectra[group].size());
        curve.fill (groups[group].baseHz, gains);
        for (std::size_t bin = 0; bin < gains.size(); ++bin)
            behind[group][bin] *= gains[bin];
    }
    return behind;
}

/// Studies one bus after the other.
class Headroom
{
public:
    Headroom (const Instrument& instrument, const InstrumentCards& cards, const HeadroomRequest& request)
        : instrument_ (instrument),
          cards_ (cards),
          request_ (request),
          keys_ (soundingKeys (instrument, request.held)),
          rail_ (instrument, sagged (cards, instrument, keys_))
    {}

    std::vector<StageHeadroom> run()
    {
        for (std::size_t bus = 0; bus < instrument_.mixingBuses.size(); ++bus)
            if (! drawnStopsOn (rail_, bus).empty())
                addBus (bus);
        if (stages_.empty())
            throw Error ("No drawn stop is on a mixing bus, so there is no stage that could clip; draw one, or give "
                         "the stops a bus in the instrument.");
        return std::move (stages_);
    }

private:
    std::vector<std::size_t> rail_drawnOn (std::size_t bus) const { return drawnStopsOn (rail_, bus); }

    void addBus (std::size_t bus)
    {
        const MixingBus& values = instrument_.mixingBuses[bus];
        const BusWaves waves (rail_, bus, keys_);
        const auto groups = waves.groups();
        std::vector<std::vector<Complex>> spectra;
        spectra.reserve (groups.size());
        for (const LockedGroup& group : groups)
            spectra.push_back (group.spectrum());

        const bool isActive = values.kind == BusKind::virtualEarth;
        StageHeadroom found = judgedSpectra (spectra, isActive ? values.rails.value_or (noLimits) : noLimits);
        found.name = values.name;
        found.role = isActive ? StageRole::busAmplifier : StageRole::passiveBus;
        if (isActive)
            found.remedies = remediesFor (found, values, request_.marginDb);
        stages_.push_back (std::move (found));
        for (std::size_t preamp = 0; preamp < instrument_.preamps.size(); ++preamp)
            if (instrument_.preamps[preamp].bus == values.name)
                addPreamp (preamp, groups, spectra);
    }

    void addPreamp (std::size_t index,
                    const std::vector<LockedGroup>& groups,
                    const std::vector<std::vector<Complex>>& spectra)
    {
        static const std::vector<std::optional<Card>> none;
        const Preamp& preamp = instrument_.preamps[index];
        const PreampResponse response (preamp, index < cards_.ofStages.size() ? cards_.ofStages[index] : none);
        for (std::size_t stage = 0; stage < preamp.stages.size(); ++stage)
        {
            const PreampStage& values = preamp.stages[stage];
            StageHeadroom found = judgedSpectra (behind (groups, spectra, response, stage + 1), limitsOf (values));
            found.name = values.name;
            found.preamp = preamp.name;
            found.role = roleOf (values.kind);
            found.remedies = remediesFor (found, values, request_.marginDb);
            stages_.push_back (std::move (found));
        }
    }

    StageHeadroom judgedSpectra (const std::vector<std::vector<Complex>>& spectra, SupplyRails limits)
    {
        std::vector<std::vector<double>> waves;
        double power = 0.0;
        for (const auto& spectrum : spectra)
        {
            waves.push_back (waveMaker_.waveOf (spectrum));
            power += std::pow (rmsOf (spectrum), 2);
        }
        StageHeadroom found = judged (waves, limits, request_.exceededShare);
        found.rmsVolts = std::sqrt (power);
        return found;
    }

    const Instrument& instrument_;
    const InstrumentCards& cards_;
    const HeadroomRequest& request_;
    std::vector<std::vector<int>> keys_;
    RailStudy rail_;
    WaveMaker waveMaker_;
    std::vector<StageHeadroom> stages_;
};

} // namespace

double StageHeadroom::peakVolts() const noexcept
{
    return std::max (-lowestVolts, highestVolts);
}

StageHeadroom judged (std::span<const std::vector<double>> waves, SupplyRails limits, double exceededShare)
{
    const AmplitudeDistribution distribution (waves);
    StageHeadroom found;
    found.limits = limits;
    found.lowestVolts = distribution.lowest();
    found.highestVolts = distribution.highest();
    found.rmsVolts = distribution.rms();
    found.shareBelow = std::isfinite (limits.low) ? distribution.shareBelow (limits.low) : 0.0;
    found.shareAbove = std::isfinite (limits.high) ? distribution.shareAbove (limits.high) : 0.0;
    found.exceededVolts = distribution.useOf (-1.0, 1.0, exceededShare);
    found.roomDb = -toDecibels (std::max (found.lowestVolts / limits.low, found.highestVolts / limits.high));
    found.roomAtShareDb = -toDecibels (distribution.useOf (limits.low, limits.high, exceededShare));
    return found;
}

std::vector<StageHeadroom>
    headroomOf (const Instrument& instrument, const InstrumentCards& cards, const HeadroomRequest& request)
{
    return Headroom (instrument, cards, request).run();
}

std::optional<std::size_t> firstToClip (std::span<const StageHeadroom> stages) noexcept
{
    const auto first = std::ranges::min_element (stages, {}, &StageHeadroom::roomDb);
    if (first == stages.end() || ! std::isfinite (first->roomDb))
        return {};
    return static_cast<std::size_t> (first - stages.begin());
}

} // namespace stopwright
