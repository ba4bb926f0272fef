// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RenderCommand.h"

#include "Command/Interruption.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/ProgressLine.h"
#include "Command/WavFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"
#include "Organ/Spelling.h"
#include "Study/HarmonicTable.h"
#include "Units/Error.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <set>
#include <system_error>

namespace stopwright
{

namespace
{

constexpr const char* footer =
    "The file is mono, 32-bit float. With --scale volts, 1.0 is one volt at the output, without any limit: set your\n"
    "player low before you listen. --scale listening is what the bench plays at its start level.\n"
    "Examples:\n"
    "  stopwright render Presets/Krummhorn8.json --midi Presets/DemonstrationPhrase.mid --out phrase.wav --scale listening\n"
    "  stopwright render Presets/Krummhorn8.json --keys \"C4 E4 G4\" --seconds 2 --out chord.wav --rate 96000\n"
    "  stopwright render Presets/LarkfieldOrgan.json --stops \"Krummhorn 8, Stopped flute 8\" --keys \"C4 E4\" --seconds 1 "
    "--out organ.wav";

std::string listed (const std::vector<std::string>& names, std::string_view before)
{
    std::vector<std::string> shown;
    shown.reserve (names.size());
    for (const auto& name : names)
        shown.push_back (printable (name));
    const std::vector<std::string_view> views (shown.begin(), shown.end());
    return listedWords (views, before);
}

std::string cardSilenceWords (const SelectedCard& selected, const Phrase& phrase)
{
    std::set<int> keys;
    for (const auto& key : phrase.keys)
        keys.insert (key.key);
    const bool hasGenerator = std::ranges::any_of (
        keys, [&] (int key) { return ! harmonicTable (selected.card, selected.keySource, key).empty(); });
    return hasGenerator
               ? "The rendering is silent: nothing of the taps' waves reaches the output of this card; look for a "
                 "switch that is open, or an output at circuit common."
               : "The rendering is silent: no generator sounds for the keys that are played at the footages of "
                 "this card; choose keys nearer to the middle, or another footage.";
}

} // namespace

void RenderCommand::declare (CLI::App& program)
{
    auto* const app =
        program.add_subcommand (name(), "Play a card or an instrument from a MIDI file or held keys into a WAV file");
    selection_.declareForBoth (*app);
    app->add_option ("--out", outFile_, "The WAV file to write")->required()->type_name ("FILE");
    phrase_.declare (*app);
    declareInstrument (*app);
    declareHowToWrite (*app);
    app->footer (footer);
    app->final_callback ([this] { phrase_.refuseContradictions(); });
}

void RenderCommand::declareInstrument (CLI::App& app)
{
    addNames (app, "--stops", tablets_,
              "Tablets of an instrument to draw instead of those its document says are drawn, couplers too, as in "
              "\"Diapason 8, Oboe 8\"; or all, for every stop");
    constexpr QuantityRange positions { Quantity::number, 0.0, 1.0, "(0 closed, 1 open)" };
    addQuantity (app, "--swell", positions, swell_,
                 "Where the swell shoe of an instrument stands at the beginning, 0 closed to 1 open (default 1); "
                 "controller 11 of a MIDI file moves it")
        ->type_name ("PLACE");
}

void RenderCommand::declareHowToWrite (CLI::App& app)
{
    constexpr int lowestRateHz = 44100;
    constexpr int highestRateHz = 192000;
    addWhole (app, "--rate", lowestRateHz, highestRateHz, rateHz_, "Sample rate, 44100 to 192000 (default 48000)")
        ->type_name ("HZ");
    addChoice (app, "--scale", { "volts", "listening" }, scaleIndex_, "volts (default) or listening")
        ->type_name ("SCALE");
}

ExitStatus RenderCommand::run (std::ostream& out, std::ostream& err)
{
    refuseOverwriting ({ selection_.cardFile(), selection_.instrumentFile(), phrase_.midiFile() });
    return isInstrument (selection_.cardFile()) ? renderInstrument (out, err) : renderCard (out, err);
}

ExitStatus RenderCommand::renderCard (std::ostream& out, std::ostream& err) const
{
    refuseWhatInstrumentsHave();
    const auto selected = selection_.load();
    const Compass compass { selected.keySource.lowestKey, selected.keySource.highestKey };
    const PhraseKeyboards keyboards { channelsOfOne (compass), Keyboard::ofChannel (1), compass };
    const RenderRequest request { phrase_.phraseFor (keyboards, err), static_cast<double> (rateHz_), scale() };

    const auto written = write ([&] (const RenderSink& sink, const RenderProgress& progress)
                                { return renderOffline (selected.card, selected.keySource, request, sink, progress); },
                                err);
    if (! written)
        return ExitStatus::interrupted;
    if (written->peak == 0.0)
        err << "stopwright: " << cardSilenceWords (selected, request.phrase) << '\n';
    sayWhatWasWritten (
        *written, printable (selected.card.name, DocumentLimits::titleCharacters) + ", " + selected.tuningWords, out);
    return ExitStatus::success;
}

ExitStatus RenderCommand::renderInstrument (std::ostream& out, std::ostream& err) const
{
    refuseWhatCardsHave();
    const auto selected = selectInstrument (selection_.cardFile(), tablets_);
    refuseOverwritingCards (selected.instrument);
    RenderRequest request { phrase_.phraseFor (keyboardsOf (selected, selection_.division()), err),
                            static_cast<double> (rateHz_), scale() };
    if (swell_ >= 0.0)
        request.phrase.swells.insert (request.phrase.swells.begin(), { 0.0, swell_ });

    const auto written =
        write ([&] (const RenderSink& sink, const RenderProgress& progress)
               { return renderOffline (selected.instrument, selected.cards, request, sink, progress); },
               err);
    if (! written)
        return ExitStatus::interrupted;
    if (written->peak == 0.0)
        err << "stopwright: The rendering is silent: no drawn stop sounds for the keys that are played; draw a stop of "
               "the division they are on, choose keys nearer to the middle, or look with stopwright check for what stays "
               "silent.\n";
    sayWhatWasWritten (*written,
                       printable (selected.instrument.name, DocumentLimits::titleCharacters) + ", "
                           + listed (drawnTablets (selected), "and") + " drawn",
                       out);
    return ExitStatus::success;
}

void RenderCommand::refuseWhatInstrumentsHave() const
{
    if (! tablets_.empty() || swell_ >= 0.0)
        throw Error (selection_.cardFile().string() + ": this is a card, which has no "
                     + (tablets_.empty() ? "swell shoe; leave out --swell" : "tablets to draw; leave out --stops")
                     + ", or render an instrument.");
}

void RenderCommand::refuseWhatCardsHave() const
{
    const auto document = selection_.cardFile().string();
    if (! selection_.instrumentFile().empty())
        throw Error (document
                     + ": this is an instrument, which has generators of its own; leave out --instrument, or name a "
                       "card in the place of this document.");
    if (phrase_.isMidi() && ! selection_.division().empty())
        throw Error (document
                     + ": the channels of a MIDI file play the divisions that hear them; leave out --division, which "
                       "goes with --keys here.");
}

void RenderCommand::refuseOverwriting (const std::vector<std::filesystem::path>& inputs) const
{
    for (const auto& input : inputs)
    {
        std::error_code ignored; // a file that is not there is not overwritten
        if (! input.empty() && std::filesystem::equivalent (input, outFile_, ignored))
            throw Error (outFile_.string() + ": this is what is read; name another file to write.");
    }
}

void RenderCommand::refuseOverwritingCards (const Instrument& instrument) const
{
    std::vector<std::filesystem::path> cards;
    for (const auto& stop : instrument.stops)
        if (! stop.cardFile.empty())
            cards.push_back (cardPath (selection_.cardFile(), stop.cardFile));
    for (const auto& preamp : instrument.preamps)
        for (const auto& stage : preamp.stages)
            if (stage.kind == StageKind::circuit)
                cards.push_back (cardPath (selection_.cardFile(), stage.cardFile));
    refuseOverwriting (cards);
}

/// None when it was stopped before the end.
std::optional<RenderCommand::Written> RenderCommand::write (const Renderer& render, std::ostream& err) const
{
    const Interruption interruption;
    WavFile file (outFile_, rateHz_);
    std::size_t frames = 0;
    float peak = 0.0F;
    RenderOutcome outcome;
    {
        ProgressLine progress (err, "rendering");
        outcome = render (
            [&] (std::span<const float> samples)
            {
                file.write (samples);
                frames += samples.size();
                for (const float sample : samples)
                    peak = std::max (peak, std::abs (sample));
            },
            [&] (double fraction)
            {
                progress.show (fraction);
                return ! interruption.isWanted();
            });
    }
    if (! outcome)
    {
        err << "stopwright: Stopped before the end; nothing was written.\n";
        return {};
    }
    file.keep();
    return Written { static_cast<double> (frames) / rateHz_, static_cast<double> (peak),
                     std::move (outcome.clippedStages) };
}

void RenderCommand::sayWhatWasWritten (const Written& written, const std::string& whatPlayed, std::ostream& out) const
{
    out << outFile_.string() << ": " << whatPlayed << ", " << fixedNumber (written.seconds, 3) << " s at " << rateHz_
        << " Hz, peak "
        << (scale() == RenderScale::volts ? formatForReading (written.peak, Quantity::voltage, 4)
                                          : fixedNumber (written.peak, 4) + " of full scale");
    if (! written.clippedStages.empty())
        out << ", clipped: " << listed (written.clippedStages, "and");
    out << '\n';
}

} // namespace stopwright
