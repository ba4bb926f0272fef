// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Study/SoundingKeys.h"
#include "Study/StageLimits.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// What a stage is of whose output the volts are told.
enum class StageRole
{
    passiveBus,
    busAmplifier, ///< of a virtual earth
    amplifier,
    follower,
    circuit
};

/// One value to change so that a stage has the wanted room again, the stages before it left as they are.
struct HeadroomRemedy
{
    enum class Kind
    {
        feedbackOhms, ///< of a virtual earth: the bus and all behind it grow softer
        gain,         ///< of an amplifier, or the ratio of its feedback
        seriesOhms,   ///< in series with the stage's input resistance and with what is in front of it
        emitterAmps   ///< of a follower that cannot sink enough
    };

    Kind kind = Kind::gain;
    double now = 0.0;
    double wanted = 0.0;
};

/// What the drawn stops and sounding keys do to the output of one stage, no clipping before it. Volts re the resting
/// point; shares of time 0 .. 1; dB as room left, negative when there is none, infinite without a limit.
struct StageHeadroom
{
    std::string name;   ///< of the mixing bus or of the stage
    std::string preamp; ///< empty for a bus
    StageRole role = StageRole::amplifier;
    SupplyRails limits = noLimits;
    double lowestVolts = 0.0; ///< peak bounds: all pitch classes at their lowest (highest) at once
    double highestVolts = 0.0;
    double rmsVolts = 0.0;
    double shareBelow = 0.0;
    double shareAbove = 0.0;
    double exceededVolts = 0.0;           ///< magnitude that is exceeded for the share of time asked for
    double roomDb = 0.0;                  ///< by the peak bounds
    double roomAtShareDb = 0.0;           ///< until the limits are exceeded for that share of time
    std::vector<HeadroomRemedy> remedies; ///< by the peak bounds; empty where the room is enough

    double peakVolts() const noexcept;
};

struct HeadroomRequest
{
    std::vector<HeldKey> held;
    double exceededShare = 0.001; ///< common practice, no source. Range: above 0, below 1
    double marginDb = 3.0;        ///< common practice, no source. Range: 0 .. 40, or -infinity: no remedies
};

/// Every mixing bus that a drawn stop is on, in the instrument's order, each with the stages of the preamps behind it.
///
/// All octaves of one pitch class come from one divider chain: their partials, from Fourier's series through the circuit,
/// are added as complex amplitudes and make one periodic wave. Different pitch classes are independent, so their highest
/// points add to the peak bound and their distributions convolve (see AmplitudeDistribution). Partials reach up to 2048
/// times the highest generator's pitch (512 at least when the keys are many), and edges are rounded within about a
/// thousandth of its period, without overshoot (see WaveMaker): the share of time at the very top of ten squares comes out
/// up to one part in fifty low for that, and so does the peak of a spike as short as that. Couplers and the sag of keyed
/// buses count; bleed of unplayed keys does not. As in the sound, a stage takes no current from what is before it beyond
/// what the document draws there: the load of a passive bus is taken to hold the input of the stage behind it.
/// `isUnwanted`, which may be empty, is asked before each bus and each stage, and before each longer step on the way to it;
/// once it says so the rest is left out, and it is asked no more.
/// Threading: [control]. Fails: Error on networks that are not sound, keys that are not there, and an instrument in which
/// no drawn stop is on a mixing bus.
std::vector<StageHeadroom> headroomOf (const Instrument& instrument,
                                       const InstrumentCards& cards,
                                       const HeadroomRequest& request,
                                       const std::function<bool()>& isUnwanted = {});

/// The stage with the least room by its peak bounds, none when nothing has a limit. Threading: [control].
std::optional<std::size_t> firstToClip (std::span<const StageHeadroom> stages) noexcept;

/// What a group of phase-locked and independent tones does at a stage: the core of the above, for any waves.
/// `waves` are single periods of independent pitch classes. Threading: [control].
StageHeadroom judged (std::span<const std::vector<double>> waves, SupplyRails limits, double exceededShare);

} // namespace stopwright
