// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/HeadroomStudy.h"

#include "Study/AmplitudeDistribution.h"
#include "Study/BusWaves.h"
#include "Study/HeadroomRemedies.h"
#include "Study/PreampResponse.h"
#include "Study/StageSpectra.h"
#include "Study/StopPort.h"
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

/// Siemens of a stage's input that the load of a passive bus holds.
double heldSiemens (const MixingBus& bus, const PreampStage& stage)
{
    return stage.coupling ? std::min (1.0 / stage.coupling->inputOhms, 1.0 / bus.loadOhms) : 0.0;
}

/// A share of time without the rounding of the distribution (see AmplitudeDistribution).
double meantShare (double share)
{
    constexpr double smallest = 1e-12;
    return share < smallest ? 0.0 : share;
}

/// Studies one bus after the other.
class Headroom
{
public:
    // What it hands out asks this object.
    Headroom (const Headroom&) = delete;
    Headroom (Headroom&&) = delete;
    Headroom& operator= (const Headroom&) = delete;
    Headroom& operator= (Headroom&&) = delete;

    Headroom (const Instrument& instrument,
              const InstrumentCards& cards,
              const HeadroomRequest& request,
              const std::function<bool()>& isUnwanted)
        : instrument_ (instrument),
          cards_ (cards),
          request_ (request),
          isUnwanted_ (
              [this, isUnwanted]
              {
                  // A stop is for good: what was left out by then cannot be caught up with.
                  if (! isStopped_ && isUnwanted)
                      isStopped_ = isUnwanted();
                  return isStopped_;
              }),
          keys_ (soundingKeys (instrument, request.held)),
          rail_ (instrument, sagged (cards, instrument, keys_)),
          state_ (rail_.asOpened())
    {}

    std::vector<StageHeadroom> run()
    {
        for (std::size_t bus = 0; bus < instrument_.mixingBuses.size(); ++bus)
            if (! isStopped_ && ! drawnStopsOn (rail_, bus).empty())
                addBus (bus);
        if (stages_.empty() && ! isStopped_)
            throw Error ("No drawn stop is on a mixing bus, so there is no stage that could clip; draw one, or give "
                         "the stops a bus in the instrument.");
        return std::move (stages_);
    }

    ~Headroom() = default;

private:
    void addBus (std::size_t bus)
    {
        const MixingBus& values = instrument_.mixingBuses[bus];
        const BusWaves waves (rail_, bus, keys_);
        const StageSpectra spectra (waves.groups(), isUnwanted_);
        if (isUnwanted_())
            return;
        const bool isActive = values.kind == BusKind::virtualEarth;
        StageHeadroom found = judgedSpectra (spectra, isActive ? values.rails.value_or (noLimits) : noLimits);
        found.name = values.name;
        found.role = isActive ? StageRole::busAmplifier : StageRole::passiveBus;
        if (isActive)
            found.remedies = remediesFor ({ found, spectra, waveMaker_, request_.marginDb, isUnwanted_ }, values,
                                          [&] (double hz) { return rail_.busSiemens (bus, state_, hz); });
        stages_.push_back (std::move (found));
        for (std::size_t preamp = 0; preamp < instrument_.preamps.size(); ++preamp)
            if (instrument_.preamps[preamp].bus == values.name)
                addPreamp (preamp, bus, spectra);
    }

    void addPreamp (std::size_t index, std::size_t bus, const StageSpectra& ofBus)
    {
        static const std::vector<std::optional<Card>> none;
        const Preamp& preamp = instrument_.preamps[index];
        const auto& cards = index < cards_.ofStages.size() ? cards_.ofStages[index] : none;
        const PreampResponse response (preamp, cards);
        ResponseCurve::Response sourceOhms = [&] (double hz) { return ohmsOfBus (bus, preamp.stages.front(), hz); };
        for (std::size_t stage = 0; stage < preamp.stages.size() && ! isUnwanted_(); ++stage)
        {
            const PreampStage& values = preamp.stages[stage];
            const auto spectra = ofBus.through ([&] (double hz) { return response.upTo (stage + 1, hz); });
            StageHeadroom found = judgedSpectra (spectra, limitsOf (values));
            found.name = values.name;
            found.preamp = preamp.name;
            found.role = roleOf (values.kind);
            found.remedies =
                remediesFor ({ found, spectra, waveMaker_, request_.marginDb, isUnwanted_ }, values, sourceOhms);
            stages_.push_back (std::move (found));
            sourceOhms = [] (double) { return 0.0; };
            if (values.kind == StageKind::circuit)
                sourceOhms = [port = std::make_shared<StopPort> (*cards[stage], Coupling().inputOhms)] (double hz)
                { return port->at (hz).ohms; };
        }
    }

    /// What the first stage has in front of it, its own input not counted.
    Complex ohmsOfBus (std::size_t bus, const PreampStage& stage, double hz) const
    {
        const MixingBus& values = instrument_.mixingBuses[bus];
        if (values.kind == BusKind::virtualEarth)
            return 0.0;
        return 1.0 / (rail_.busSiemens (bus, state_, hz) - heldSiemens (values, stage));
    }

    StageHeadroom judgedSpectra (const StageSpectra& spectra, SupplyRails limits)
    {
        StageHeadroom found = judged (spectra.waves (waveMaker_), limits, request_.exceededShare);
        found.rmsVolts = spectra.rmsVolts();
        return found;
    }

    const Instrument& instrument_;
    const InstrumentCards& cards_;
    const HeadroomRequest& request_;
    bool isStopped_ = false;
    std::function<bool()> isUnwanted_;
    std::vector<std::vector<int>> keys_;
    RailStudy rail_;
    RailState state_;
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
    found.shareBelow = std::isfinite (limits.low) ? meantShare (distribution.shareBelow (limits.low)) : 0.0;
    found.shareAbove = std::isfinite (limits.high) ? meantShare (distribution.shareAbove (limits.high)) : 0.0;
    found.exceededVolts = distribution.useOf (-1.0, 1.0, exceededShare);
    found.roomDb = peakRoomDb (found.lowestVolts, found.highestVolts, limits);
    found.roomAtShareDb = -toDecibels (distribution.useOf (limits.low, limits.high, exceededShare));
    return found;
}

std::vector<StageHeadroom> headroomOf (const Instrument& instrument,
                                       const InstrumentCards& cards,
                                       const HeadroomRequest& request,
                                       const std::function<bool()>& isUnwanted)
{
    return Headroom (instrument, cards, request, isUnwanted).run();
}

std::optional<std::size_t> firstToClip (std::span<const StageHeadroom> stages) noexcept
{
    const auto first = std::ranges::min_element (stages, {}, &StageHeadroom::roomDb);
    if (first == stages.end() || ! std::isfinite (first->roomDb))
        return {};
    return static_cast<std::size_t> (first - stages.begin());
}

} // namespace stopwright
