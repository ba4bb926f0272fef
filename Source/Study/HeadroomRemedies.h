// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HeadroomStudy.h"
#include "Study/StageSpectra.h"

#include <functional>

namespace stopwright
{

class WaveMaker;

/// What a remedy is worked out from: a stage, the waves at its output, and the room it shall have by its peak bounds.
/// `isUnwanted`, which may be empty, is asked before each step of a search; once it says so nothing is found.
struct RemedyCase
{
    const StageHeadroom& found;
    const StageSpectra& spectra;
    WaveMaker& waveMaker;
    double marginDb;
    std::function<bool()> isUnwanted {};
};

// What brings back room. Each value is searched until the waves made anew with it leave marginDb to 1e-4 dB, so that
// bandwidths and coupling corners that move with it count. Empty when the stage has marginDb or no limit, and without a
// value that would not settle. Threading: [control].

/// The feedback resistance. `siemens`: of all that is on the bus, by frequency.
std::vector<HeadroomRemedy>
    remediesFor (const RemedyCase& wish, const MixingBus& bus, const ResponseCurve::Response& siemens);

/// The gain; a resistor R in series with the input resistance Rin, where the stage states one; for a follower that cannot
/// sink enough, its standing current.
///
/// `sourceOhms`: Zs of what is in front of the stage without its own input on it, by frequency. What is told of the place
/// before the stage holds with Rin on it, so that R leaves (Rin + Zs) / (Rin + Zs + R + 1 / jwC) of it; an inverting
/// amplifier, whose input resistor Rin is, then has less noise gain too.
std::vector<HeadroomRemedy>
    remediesFor (const RemedyCase& wish, const PreampStage& stage, const ResponseCurve::Response& sourceOhms);

} // namespace stopwright
