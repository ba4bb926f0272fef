// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Organ/KeySource.h"
#include "Sound/Phrase.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

enum class RenderScale
{
    volts,    ///< 1.0 is one volt at the output of card or instrument, unlimited
    listening ///< as the live engine plays it at its start level, limiter included
};

struct RenderRequest
{
    Phrase phrase;
    double rateHz = 48000.0;
    RenderScale scale = RenderScale::volts;
};

/// How a rendering ended: true when it came to its end, false when it was stopped.
struct RenderOutcome
{
    bool isComplete = false;
    std::vector<std::string> clippedStages; ///< of an instrument: "preamp: stage", each once

    explicit operator bool() const noexcept { return isComplete; }
};

using RenderSink = std::function<void (std::span<const float>)>;
using RenderProgress = std::function<bool (double)>;

/// Renders a card away from any device: `sink` gets the samples block by block; `progress` (may be empty) gets
/// 0 .. 1 and returns false to stop. The same kernel as live sound; volts come from a finer internal rate
/// (StreamSpec::fineInternalRateHz), so that partials agree with harmonicTable up to 10 kHz. What the kernel delays is
/// taken off: the first sample is the phrase's first. All MIDI channels of the phrase play the card's one keyboard: a
/// key sounds until the last of them lets go of it.
/// Threading: [control]. Fails: Error with a sentence (unsound card, a non-finite sample).
RenderOutcome renderOffline (const Card& card,
                             const KeySource& keySource,
                             const RenderRequest& request,
                             const RenderSink& sink,
                             const RenderProgress& progress = {});

/// The same of an instrument with the tablets that it says are drawn. Keyboards play the divisions that hear them; keys
/// of one that none hears are left out. The swell shoe starts where a move at 0 puts it; a later move is taken at the
/// beginning of the block of 512 samples it falls into, and the shoe is there 30 ms after. The listening level is
/// measured by referenceTablet.
RenderOutcome renderOffline (const Instrument& instrument,
                             const InstrumentCards& cards,
                             const RenderRequest& request,
                             const RenderSink& sink,
                             const RenderProgress& progress = {});

/// The tablet an instrument's listening level is measured by when no stop is in hand: the first that is drawn, else the
/// proposed one, else the first, among those that have a card. Empty when none has. Threading: [control].
std::string referenceTablet (const Instrument& instrument, const InstrumentCards& cards);

} // namespace stopwright
