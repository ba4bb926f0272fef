// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"
#include "Organ/InstrumentCards.h"
#include "Study/PreampResponse.h"
#include "Study/RailPartial.h"
#include "Study/RailState.h"
#include "Study/StopPort.h"

#include <complex>
#include <cstddef>
#include <memory>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace stopwright
{

/// The stop rail of an instrument as a circuit for small signals: what each stop gives behind the buses and preamps with
/// all the others standing as they do. Analysis at single frequencies, exact for linear networks; a network with diodes or
/// transistors is taken about its operating point, and no rail clips.
/// Threading: [control], one thread at a time.
class RailStudy
{
public:
    /// All stages of the preamp.
    static constexpr std::size_t allStages = static_cast<std::size_t> (-1);

    /// Fails: Error on a card or stage whose network is not sound, a tuning that cannot be made, and on cards.errors.
    RailStudy (Instrument instrument, InstrumentCards cards);

    const Instrument& instrument() const noexcept { return instrument_; }

    /// Fails: Error as refuseStop says: no such stop, a blank tablet, a coupler.
    std::size_t findStop (std::string_view name) const;

    /// A tablet with a card; only such stops may be asked for partials.
    bool hasCard (std::size_t stop) const noexcept { return cards_.ofStops[stop].has_value(); }

    const Card& card (std::size_t stop) const { return *cards_.ofStops[stop]; }

    const KeySource& keySource (std::size_t stop) const { return *stops_[stop].keySource; }

    /// Index of its mixing bus, or nothing when the stop is on none and is heard at its card's output.
    std::optional<std::size_t> busOf (std::size_t stop) const noexcept { return stops_[stop].bus; }

    /// The preamp that a bus goes through: the first that names it. Nothing when none does.
    std::optional<std::size_t> preampOf (std::size_t bus) const noexcept { return preampOfBus_[bus]; }

    /// As the instrument is opened, with its mixing resistors.
    RailState asOpened() const;

    /// The same with these stops drawn and no others.
    RailState withDrawn (const std::vector<std::size_t>& stops) const;

    /// Partials up to highestHz behind `stageEnd` stages of the preamp (0: what is heard of the bus itself), in ascending
    /// frequency, one row for each pitch. Whether the stop is drawn in `state` does not matter: it is taken to be.
    std::vector<RailPartial> partials (std::size_t stop,
                                       int key,
                                       const RailState& state,
                                       std::size_t stageEnd = allStages,
                                       double highestHz = 20000.0) const;

    /// Volts heard of a bus per ampere that flows into it at zero volts. Range: frequencyHz > 0.
    std::complex<double> busOhms (std::size_t bus, const RailState& state, double frequencyHz) const;

    /// Siemens of everything on a bus: stops, load, capacitance; not the amplifier of a virtual earth.
    std::complex<double> busSiemens (std::size_t bus, const RailState& state, double frequencyHz) const;

    /// Gain of all stages behind a bus together; 1 when it has no preamp. Range: frequencyHz > 0.
    std::complex<double> preampGain (std::size_t bus, double frequencyHz) const
    {
        return onward (bus, allStages, frequencyHz);
    }

    const StopPort& port (std::size_t stop) const { return *stops_[stop].port; }

private:
    struct Stop
    {
        std::optional<std::size_t> bus;
        std::optional<KeySource> keySource; ///< like port: none for a blank tablet
        std::unique_ptr<StopPort> port;
    };

    void addStop (std::size_t stop);
    StopStand standWhenRetired (std::size_t stop) const noexcept;
    std::complex<double> onward (std::size_t bus, std::size_t stageEnd, double frequencyHz) const;

    Instrument instrument_;
    InstrumentCards cards_;
    std::vector<Stop> stops_;
    std::vector<std::vector<std::size_t>> stopsOfBus_;
    std::vector<std::optional<std::size_t>> preampOfBus_;
    std::vector<PreampResponse> preamps_;
    mutable std::vector<std::unordered_map<double, std::complex<double>>> keptOnward_; ///< [bus], through all stages
};

} // namespace stopwright
