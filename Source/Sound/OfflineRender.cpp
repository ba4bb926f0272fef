// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/OfflineRender.h"

#include "Sound/CardVoice.h"
#include "Sound/InstrumentVoice.h"
#include "Sound/ListeningSource.h"
#include "Sound/PhrasePlayer.h"
#include "Sound/SwellShoe.h"
#include "Sound/VoltsSource.h"
#include "Units/Error.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <memory>

namespace stopwright
{

namespace
{

constexpr int blockFrames = RenderSource::blockFrames;

[[noreturn]] void refuseFault (const std::string& what)
{
    throw Error ("The output of " + what
                 + " runs away to infinity, so there is nothing to render: look for an amplifier whose feedback "
                   "goes to its plus input.");
}

std::vector<std::string> namesOf (std::uint64_t bits, const std::vector<std::string>& names)
{
    std::vector<std::string> chosen;
    constexpr std::size_t bitCount = 64;
    for (std::size_t index = 0; index < std::min (bitCount, names.size()); ++index)
        if ((bits >> index & 1U) != 0)
            chosen.push_back (names[index]);
    return chosen;
}

/// Runs a source over lead-in and phrase and passes on what follows the lead-in.
RenderOutcome run (const RenderRequest& request,
                   RenderSource& source,
                   const std::string& what,
                   const RenderSink& sink,
                   const RenderProgress& progress)
{
    const std::int64_t wanted = std::llround (std::max (0.0, request.phrase.seconds) * request.rateHz);
    const std::int64_t silentFrames = std::llround (source.leadInSeconds() * request.rateHz);
    const std::int64_t leadIn = silentFrames + source.delayFrames();
    const std::int64_t total = leadIn + wanted;
    PhrasePlayer player (request.phrase, request.rateHz, silentFrames);

    std::array<float, blockFrames> block {};
    for (std::int64_t frame = 0; frame < total; frame += blockFrames)
    {
        if (progress && ! progress (static_cast<double> (frame) / static_cast<double> (total)))
            return {};
        const int count = static_cast<int> (std::min<std::int64_t> (blockFrames, total - frame));
        const auto samples = std::span (block).first (static_cast<std::size_t> (count));
        player.advance (count);
        if (const auto position = player.swell())
            source.setSwell (*position);
        source.process (player.events(), samples);
        if (source.hasFault())
            refuseFault (what);
        const auto skipped = std::clamp<std::int64_t> (leadIn - frame, 0, count);
        if (skipped < count)
            sink (samples.subspan (static_cast<std::size_t> (skipped)));
    }
    return { ! progress || progress (1.0), namesOf (source.clips(), source.clipNames()) };
}

/// Volts are numbers to be compared, and there is time: at the live rate a notch near 10 kHz would be off by 1 dB.
StreamSpec specFor (const RenderRequest& request)
{
    StreamSpec spec { .deviceRateHz = request.rateHz, .maxFrames = blockFrames };
    checkStream (spec);
    if (request.scale == RenderScale::volts)
        spec.lowestInternalRateHz = StreamSpec::fineInternalRateHz;
    return spec;
}

} // namespace

RenderOutcome renderOffline (const Card& card,
                             const KeySource& keySource,
                             const RenderRequest& request,
                             const RenderSink& sink,
                             const RenderProgress& progress)
{
    const auto spec = specFor (request);
    const auto what = "card '" + card.name + "'";
    if (request.scale == RenderScale::volts)
    {
        VoltsSource source (std::make_unique<CardVoice> (card, keySource, spec), 0.0, {});
        return run (request, source, what, sink, progress);
    }
    ListeningSource source (spec);
    source.engine().setCard (card, keySource, true);
    return run (request, source, what, sink, progress);
}

RenderOutcome renderOffline (const Instrument& instrument,
                             const InstrumentCards& cards,
                             const RenderRequest& request,
                             const RenderSink& sink,
                             const RenderProgress& progress)
{
    const auto spec = specFor (request);
    const auto what = "instrument '" + instrument.name + "'";
    if (request.scale == RenderScale::volts)
    {
        // A shoe that does not start open must be in its place when the phrase begins.
        const bool shoeStartsOpen = std::ranges::none_of (request.phrase.swells, [] (const TimedSwell& swell)
                                                          { return swell.seconds <= 0.0 && swell.position < 1.0; });
        auto voice = std::make_unique<InstrumentVoice> (instrument, cards, spec);
        auto clipNames = voice->clipNames();
        VoltsSource source (std::move (voice), shoeStartsOpen ? 0.0 : SwellShoe::rampSeconds, std::move (clipNames));
        return run (request, source, what, sink, progress);
    }
    ListeningSource source (spec);
    source.engine().setInstrument (instrument, cards, referenceTablet (instrument, cards), true);
    return run (request, source, what, sink, progress);
}

std::string referenceTablet (const Instrument& instrument, const InstrumentCards& cards)
{
    const StopTablet* drawn = nullptr;
    const StopTablet* proposed = nullptr;
    const StopTablet* first = nullptr;
    const auto keepFirst = [] (const StopTablet*& kept, const StopTablet& stop, bool wanted)
    {
        if (kept == nullptr && wanted)
            kept = &stop;
    };
    for (std::size_t index = 0; index < std::min (instrument.stops.size(), cards.ofStops.size()); ++index)
    {
        const StopTablet& stop = instrument.stops[index];
        if (! cards.ofStops[index])
            continue;
        keepFirst (drawn, stop, stop.drawn);
        keepFirst (proposed, stop, stop.proposed);
        keepFirst (first, stop, true);
    }
    const StopTablet* const chosen = drawn != nullptr ? drawn : proposed != nullptr ? proposed : first;
    return chosen != nullptr ? chosen->name : std::string();
}

} // namespace stopwright
