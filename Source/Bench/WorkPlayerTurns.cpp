// SPDX-License-Identifier: GPL-3.0-or-later
//
// How WorkPlayer has the sound follow by turning what sounds.
#include "Bench/CardDifference.h"
#include "Bench/WorkPlayer.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// Whether turning mixing resistors and tremulants makes one instrument the other. What is noted of how it was found, and
/// fields that nobody knows, do not sound.
bool areKnobsAllThatDiffers (Instrument from, const Instrument& to)
{
    if (from.stops.size() != to.stops.size() || from.outlets.size() != to.outlets.size())
        return false;
    for (std::size_t index = 0; index < to.stops.size(); ++index)
    {
        from.stops[index].mixingOhms = to.stops[index].mixingOhms;
        from.stops[index].asFound = to.stops[index].asFound;
    }
    from.unknownFields = to.unknownFields;
    for (std::size_t index = 0; index < to.outlets.size(); ++index)
        from.outlets[index].tremulant = to.outlets[index].tremulant;
    return isSameInstrument (from, to);
}

} // namespace

bool WorkPlayer::turnMixings (const BenchWork& to)
{
    for (std::size_t index = 0; index < to.instrument->stops.size(); ++index)
    {
        const auto& stop = to.instrument->stops[index];
        if (stop.mixingOhms != sounding_.instrument->stops[index].mixingOhms
            && ! processor_.engine().turnMixing (stop.name, stop.mixingOhms))
            return false;
    }
    return true;
}

bool WorkPlayer::turnTremulants (const BenchWork& to)
{
    for (std::size_t index = 0; index < to.instrument->outlets.size(); ++index)
    {
        const auto& outlet = to.instrument->outlets[index];
        if (outlet.tremulant != sounding_.instrument->outlets[index].tremulant
            && ! processor_.engine().turnTremulant (outlet.name, outlet.tremulant))
            return false;
    }
    return true;
}

/// Whether turning knobs made the sound that of `to`. Where it is not enough nothing needs to be taken back: what is
/// built next fades over from wherever the knobs are.
bool WorkPlayer::turnTo (const BenchWork& to)
{
    // A network that ran away keeps its fault while its values are turned; a fresh one does not have it.
    if (processor_.engine().isSilencedByFault() || to.stopIndex != sounding_.stopIndex
        || to.cardName() != sounding_.cardName() || to.trials.size() != sounding_.trials.size())
        return false;
    for (const auto& [name, pair] : to.trials)
    {
        const auto before = sounding_.trials.find (name);
        if (before == sounding_.trials.end() || before->second.isB != pair.isB
            || (name != to.cardName() && before->second.inHand() != pair.inHand()))
            return false;
    }
    const auto isInHand = [&] (const StopTablet& stop) { return stop.cardFile == to.cardName(); };
    const bool isShared = to.instrument && std::ranges::count_if (to.instrument->stops, isInHand) > 1;
    const auto moves = knobMovesBetween (sounding_.card(), to.card());
    if (! moves || (isShared && ! moves->empty())
        || (to.instrument && ! areKnobsAllThatDiffers (*sounding_.instrument, *to.instrument)))
        return false;

    for (const auto& move : *moves)
    {
        const bool isTurned = move.knob.place == CardKnob::Place::tapLevel
                                  ? processor_.turnTapLevel (move.knob.name, move.value, to.card())
                                  : processor_.turn (move.knob.partKnob(), move.value, to.card());
        if (! isTurned)
            return false;
    }
    return ! to.instrument || (turnMixings (to) && turnTremulants (to));
}

} // namespace stopwright
