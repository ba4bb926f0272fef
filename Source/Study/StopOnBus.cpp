// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/StopOnBus.h"

#include "Study/TapPartials.h"
#include "Units/AWeighting.h"

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// Siemens that a stop of the rail puts on its bus.
Complex siemensOf (StopStand stand, Complex networkOhms, double mixingOhms) noexcept
{
    if (stand == StopStand::drawn)
        return 1.0 / (networkOhms + mixingOhms);
    return stand == StopStand::grounded ? 1.0 / mixingOhms : 0.0;
}

/// Volts of all taps together at the card's output, unloaded.
Complex unloadedVolts (std::span<const TapPartial> samePitch, const StopPort::Equivalent& port)
{
    Complex volts = 0.0;
    for (const TapPartial& tap : samePitch)
        volts += tap.volts * port.tapGains[tap.tap];
    return volts;
}

} // namespace

StopOnBus::StopOnBus (const RailStudy& study,
                      std::size_t stop,
                      const RailState& state,
                      const BusSurroundings* around,
                      std::span<const int> keys)
    : stop_ (stop)
{
    starts_.push_back (0);
    for (const int key : keys)
    {
        addKey (study, state, around, key);
        starts_.push_back (partials_.size());
    }
}

void StopOnBus::addKey (const RailStudy& study, const RailState& state, const BusSurroundings* around, int key)
{
    const auto ofTaps = tapPartials (study.card (stop_), study.keySource (stop_), key);
    for (std::span<const TapPartial> left (ofTaps); ! left.empty();)
    {
        const auto samePitch = left.first (samePitchCount (left));
        left = left.subspan (samePitch.size());
        double source = 0.0;
        for (const TapPartial& tap : samePitch)
            source += std::abs (tap.volts);
        if (source == 0.0)
            continue;

        const double hz = samePitch.front().frequencyHz;
        const auto& port = study.port (stop_).at (hz);
        const double weight = aWeighting (hz);
        Partial partial { 0.0, weight * weight, port.ohms, 0.0, 0.0 };
        Complex volts = unloadedVolts (samePitch, port);
        if (around != nullptr)
        {
            const auto& bus = around->at (hz);
            Complex others = bus.siemens;
            if (around->leftOut() != stop_)
                others -= siemensOf (state.stands[stop_], port.ohms, state.mixingOhms[stop_]);
            felt_ = bus.felt;
            partial.siemens = bus.felt * others + bus.amplifier;
            partial.leftOutOhms = bus.leftOutOhms;
            volts *= bus.drive;
        }
        partial.squaredVolts = 0.5 * std::norm (volts);
        partials_.push_back (partial);
    }
}

TonePower StopOnBus::power (std::size_t keyIndex, double mixingOhms, const LeftOutStand& leftOut) const noexcept
{
    TonePower sum;
    for (std::size_t index = starts_[keyIndex]; index < starts_[keyIndex + 1]; ++index)
    {
        const Partial& partial = partials_[index];
        const Complex siemens =
            partial.siemens + felt_ * siemensOf (leftOut.stand, partial.leftOutOhms, leftOut.mixingOhms);
        const double plain = partial.squaredVolts / std::norm ((partial.ownOhms + mixingOhms) * siemens + felt_);
        sum.plain += plain;
        sum.aWeighted += partial.squaredWeight * plain;
    }
    return sum;
}

} // namespace stopwright
