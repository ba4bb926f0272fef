// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Study/LoadedNode.h"
#include "Study/RailStudy.h"

#include <functional>
#include <memory>
#include <string>
#include <unordered_map>

namespace stopwright
{

/// A place to put a probe on: what a stop's keys give there, and the impedance behind it.
///
/// In an instrument the other stops stand as the document draws them and this one is drawn. Outputs of virtual earths,
/// amplifiers and followers count as sources without resistance; a passive bus and a circuit stage have theirs.
/// Threading: [control], one thread at a time.
class BenchPoint
{
public:
    /// A node of a card by itself, its output loaded with nothing; the output when `node` is empty. Fails: as LoadedNode.
    static BenchPoint ofCard (const Card& card, const KeySource& keySource, const std::string& node);

    /// A node of a stop's card in its instrument. Fails: Error as RailStudy and LoadedNode.
    static BenchPoint ofStop (const Instrument& instrument,
                              const InstrumentCards& cards,
                              const std::string& stop,
                              const std::string& node);

    /// What is heard of the stop's mixing bus. Fails: Error as above, and when the stop is on none.
    static BenchPoint ofBus (const Instrument& instrument, const InstrumentCards& cards, const std::string& stop);

    /// The output of the preamp behind it. Fails: Error as above, and when the bus has none.
    static BenchPoint ofPreamp (const Instrument& instrument, const InstrumentCards& cards, const std::string& stop);

    const Card& card() const noexcept { return card_; }

    const KeySource& keySource() const noexcept { return keySource_; }

    /// The tablet's where the place lies behind it, else 1; taps have their own besides.
    int polarity() const noexcept { return polarity_; }

    /// Range: frequencyHz > 0. The reference stays good as long as the point does.
    const NodeEquivalent& at (double frequencyHz) const;

    /// The stop rail, its bus and the gain from what is heard of the bus to here, for places behind a bus only.
    std::shared_ptr<const RailStudy> rail() const noexcept { return rail_; }

    std::size_t bus() const noexcept { return bus_; }

    const RailState& state() const noexcept { return state_; }

    bool isBehindBus() const noexcept { return static_cast<bool> (onward_); }

    std::complex<double> onward (double frequencyHz) const { return onward_ (frequencyHz); }

private:
    using Equivalent = std::function<NodeEquivalent (double)>;
    using Gain = std::function<std::complex<double> (double)>;

    BenchPoint (Card card, KeySource keySource) : card_ (std::move (card)), keySource_ (std::move (keySource)) {}

    static BenchPoint behindBus (const std::shared_ptr<const RailStudy>& rail,
                                 std::size_t stop,
                                 const Gain& onward,
                                 const Gain& ohms);

    Card card_;
    KeySource keySource_;
    int polarity_ = 1;
    Equivalent equivalent_;
    std::shared_ptr<const RailStudy> rail_;
    std::size_t bus_ = 0;
    RailState state_;
    Gain onward_;
    mutable std::unordered_map<double, NodeEquivalent> kept_;
};

} // namespace stopwright
