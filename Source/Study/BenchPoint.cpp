// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BenchPoint.h"

#include "Circuit/SmallSignal.h"
#include "Study/PreampResponse.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

RailState stateWith (const RailStudy& rail, std::size_t stop)
{
    RailState state = rail.asOpened();
    state.stands[stop] = StopStand::drawn;
    return state;
}

/// What a stop's card drives: its mixing resistor and the bus behind it without itself.
Complex loadOf (const RailStudy& rail, std::size_t stop, const RailState& state, double hz)
{
    const MixingBus& bus = rail.instrument().mixingBuses[*rail.busOf (stop)];
    const double mixingOhms = state.mixingOhms[stop];
    if (bus.kind == BusKind::virtualEarth && ! bus.gainBandwidthHz)
        return 1.0 / mixingOhms;
    Complex rest = rail.busSiemens (*rail.busOf (stop), state, hz) - 1.0 / (rail.port (stop).at (hz).ohms + mixingOhms);
    if (bus.kind == BusKind::virtualEarth)
        rest += Complex (1.0, -*bus.gainBandwidthHz / hz) / bus.feedbackOhms;
    return 1.0 / (mixingOhms + 1.0 / rest);
}

/// Without the cards of stops on other buses: nothing of them comes to the stop's, and most of the work would be theirs.
InstrumentCards onBusOf (const Instrument& instrument, InstrumentCards cards, const std::string& stop)
{
    const auto found = std::ranges::find (instrument.stops, stop, &StopTablet::name);
    for (std::size_t index = 0; found != instrument.stops.end() && index < cards.ofStops.size(); ++index)
        if (instrument.stops[index].name != stop && instrument.stops[index].bus != found->bus)
            cards.ofStops[index].reset();
    return cards;
}

std::size_t requiredBus (const RailStudy& rail, std::size_t stop)
{
    if (const auto bus = rail.busOf (stop))
        return *bus;
    throw Error ("The stop " + quotedText (rail.instrument().stops[stop].name)
                 + " is on no mixing bus; measure at a node of its card.");
}

/// Ohms of the last stage: those of a circuit, else none.
std::function<Complex (double)> outputOhms (const Preamp& preamp, const std::vector<std::optional<Card>>& cards)
{
    if (preamp.stages.empty() || preamp.stages.back().kind != StageKind::circuit)
        return [] (double) { return Complex(); };
    const Card& card = *cards[preamp.stages.size() - 1];
    const auto circuit = std::make_shared<const SmallSignal> (netlistOf (card));
    return [circuit, node = card.output] (double hz) { return circuit->impedance (node, hz); };
}

} // namespace

BenchPoint BenchPoint::ofCard (const Card& card, const KeySource& keySource, const std::string& node)
{
    BenchPoint point (card, keySource);
    const auto loaded = std::make_shared<const LoadedNode> (card, node);
    point.equivalent_ = [loaded] (double hz) { return loaded->at (hz); };
    return point;
}

BenchPoint BenchPoint::ofStop (const Instrument& instrument,
                               const InstrumentCards& cards,
                               const std::string& stop,
                               const std::string& node)
{
    const auto rail = std::make_shared<const RailStudy> (instrument, onBusOf (instrument, cards, stop));
    const auto index = rail->findStop (stop);
    BenchPoint point (rail->card (index), rail->keySource (index));
    LoadedNode::Admittance load;
    if (rail->busOf (index))
        load = [rail, index, state = stateWith (*rail, index)] (double hz) { return loadOf (*rail, index, state, hz); };
    const auto loaded = std::make_shared<const LoadedNode> (point.card_, node, load);
    point.equivalent_ = [loaded] (double hz) { return loaded->at (hz); };
    return point;
}

BenchPoint BenchPoint::behindBus (const std::shared_ptr<const RailStudy>& rail,
                                  std::size_t stop,
                                  const Gain& onward,
                                  const Gain& ohms)
{
    BenchPoint point (rail->card (stop), rail->keySource (stop));
    point.rail_ = rail;
    point.bus_ = *rail->busOf (stop);
    point.polarity_ = rail->instrument().stops[stop].polarity;
    point.onward_ = onward;
    point.state_ = stateWith (*rail, stop);
    point.equivalent_ = [=, state = point.state_, bus = point.bus_] (double hz)
    {
        const auto& port = rail->port (stop).at (hz);
        const Complex gain = rail->busOhms (bus, state, hz) / (port.ohms + state.mixingOhms[stop]) * onward (hz);
        NodeEquivalent equivalent { port.tapGains, ohms (hz) };
        for (Complex& tapGain : equivalent.tapGains)
            tapGain *= gain;
        return equivalent;
    };
    return point;
}

BenchPoint BenchPoint::ofBus (const Instrument& instrument, const InstrumentCards& cards, const std::string& stop)
{
    const auto rail = std::make_shared<const RailStudy> (instrument, cards);
    const auto index = rail->findStop (stop);
    const auto bus = requiredBus (*rail, index);
    Gain ohms = [] (double) { return Complex(); };
    if (instrument.mixingBuses[bus].kind == BusKind::passive)
        ohms = [rail, bus, state = stateWith (*rail, index)] (double hz) { return rail->busOhms (bus, state, hz); };
    return behindBus (
        rail, index, [] (double) { return Complex (1.0); }, ohms);
}

BenchPoint BenchPoint::ofPreamp (const Instrument& instrument, const InstrumentCards& cards, const std::string& stop)
{
    static const std::vector<std::optional<Card>> none;
    const auto rail = std::make_shared<const RailStudy> (instrument, cards);
    const auto index = rail->findStop (stop);
    const auto preamp = rail->preampOf (requiredBus (*rail, index));
    if (! preamp)
        throw Error ("No preamp is behind the mixing bus " + quotedText (instrument.stops[index].bus)
                     + "; measure at the bus.");
    const auto& ofStages = *preamp < cards.ofStages.size() ? cards.ofStages[*preamp] : none;
    const auto chain = std::make_shared<const PreampResponse> (instrument.preamps[*preamp], ofStages);
    return behindBus (
        rail, index, [chain] (double hz) { return chain->at (hz); },
        outputOhms (instrument.preamps[*preamp], ofStages));
}

const NodeEquivalent& BenchPoint::at (double frequencyHz) const
{
    const auto known = kept_.find (frequencyHz);
    if (known != kept_.end())
        return known->second;
    return kept_.emplace (frequencyHz, equivalent_ (frequencyHz)).first->second;
}

} // namespace stopwright
