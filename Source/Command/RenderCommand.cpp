// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/RenderCommand.h"

#include "Command/Interruption.h"
#include "Command/MidiPhrase.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Command/ProgressLine.h"
#include "Command/WavFile.h"
#include "Organ/DocumentFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <cmath>
#include <ostream>
#include <system_error>

namespace stopwright
{

namespace
{

constexpr double longestSeconds = 3600.0;
constexpr double longestTailSeconds = 60.0;
constexpr double midiTailSeconds = 0.5;

constexpr const char* footer =
    "The file is mono, 32-bit float. With --scale volts, 1.0 is one volt at the card's output, without any limit:\n"
    "set your player low before you listen. --scale listening is what the bench plays at its start level.\n"
    "Examples:\n"
    "  stopwright render Presets/Krummhorn8.json --midi Presets/DemonstrationPhrase.mid --out phrase.wav --scale listening\n"
    "  stopwright render Presets/Krummhorn8.json --keys \"C4 E4 G4\" --seconds 2 --out chord.wav --rate 96000";

/// What was written, as it goes by.
struct Summary
{
    std::size_t frames = 0;
    float peak = 0.0F;

    void add (std::span<const float> samples)
    {
        frames += samples.size();
        for (const float sample : samples)
            peak = std::max (peak, std::abs (sample));
    }
};

std::string peakWords (const Summary& summary, RenderScale scale)
{
    const double peak = static_cast<double> (summary.peak);
    return scale == RenderScale::volts ? formatForReading (peak, Quantity::voltage, 4)
                                       : fixedNumber (peak, 4) + " of full scale";
}

} // namespace

void RenderCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "Play a card from a MIDI file or held keys into a WAV file");
    selection_.declare (*app);
    app->add_option ("--out", outFile_, "The WAV file to write")->required()->type_name ("FILE");
    declareWhatToPlay (*app);
    declareHowToWrite (*app);
    app->footer (footer);
    app->final_callback ([this] { refuseContradictions(); });
}

void RenderCommand::declareWhatToPlay (CLI::App& app)
{
    app.add_option ("--midi", midiFile_, "A standard MIDI file, all channels (format 0 or 1)")->type_name ("FILE");
    addKeys (app, "--keys", keys_, "Keys to hold down together, as in \"C4 E4\"");

    constexpr QuantityRange durations { Quantity::time, 1e-3, longestSeconds, "s" };
    addQuantity (app, "--seconds", durations, seconds_, "How long the keys are held")->type_name ("S");
    constexpr QuantityRange tails { Quantity::time, 0.0, longestTailSeconds, "s" };
    addQuantity (app, "--tail", tails, tailSeconds_,
                 "Ring-out after the last key (default 0.5 with --midi, 0 with --keys)")
        ->type_name ("S");
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

void RenderCommand::refuseContradictions() const
{
    if (midiFile_.empty() == keys_.empty())
        throw CLI::ValidationError ("either --midi or --keys is needed");
    if (! keys_.empty() && seconds_ == 0.0)
        throw CLI::ValidationError ("--keys needs --seconds");
    if (keys_.empty() && seconds_ != 0.0)
        throw CLI::ValidationError ("--seconds goes with --keys, for a MIDI file has its own length");
}

void RenderCommand::refuseOverwritingInput() const
{
    for (const auto& input : { selection_.cardFile(), selection_.instrumentFile(), midiFile_ })
    {
        std::error_code ignored; // a file that is not there is not overwritten
        if (! input.empty() && std::filesystem::equivalent (input, outFile_, ignored))
            throw Error (outFile_.string() + ": this is what is read; name another file to write.");
    }
}

Phrase RenderCommand::heldPhrase (const KeySource& keySource) const
{
    for (const int key : keys_)
        if (key < keySource.lowestKey || key > keySource.highestKey)
            throw Error ("Key " + keyName (key) + " is not on this keyboard, which goes from "
                         + keyName (keySource.lowestKey) + " to " + keyName (keySource.highestKey)
                         + "; choose a key between them.");
    auto phrase = heldKeys (keys_, seconds_);
    phrase.seconds += tailOr (0.0);
    return phrase;
}

Phrase RenderCommand::midiPhrase (const KeySource& keySource, std::ostream& err) const
{
    const auto origin = midiFile_.string();
    auto played =
        phraseOf (parseMidiFile (readDocumentFile (midiFile_), origin), keySource.lowestKey, keySource.highestKey);
    const auto compass = keyName (keySource.lowestKey) + " to " + keyName (keySource.highestKey);
    if (played.notes == 0)
        throw Error (origin + ": there is nothing to play in the MIDI file on the keys from " + compass + ".");
    if (played.phrase.seconds > longestSeconds)
        throw Error (origin + ": the MIDI file lasts longer than an hour; render it in parts.");
    if (played.notesLeftOut != 0)
        err << "stopwright: " << origin << ": " << played.notesLeftOut << " of " << played.notes + played.notesLeftOut
            << " notes lie outside the keys from " << compass << " and are left out.\n";
    played.phrase.seconds += tailOr (midiTailSeconds);
    return std::move (played.phrase);
}

Phrase RenderCommand::phraseFor (const KeySource& keySource, std::ostream& err) const
{
    return keys_.empty() ? midiPhrase (keySource, err) : heldPhrase (keySource);
}

ExitStatus RenderCommand::run (std::ostream& out, std::ostream& err)
{
    refuseOverwritingInput();
    const auto selected = selection_.load();
    const RenderRequest request { phraseFor (selected.keySource, err), static_cast<double> (rateHz_), scale() };

    const Interruption interruption;
    WavFile file (outFile_, rateHz_);
    Summary summary;
    bool finished = false;
    {
        ProgressLine progress (err, "rendering");
        finished = renderOffline (
            selected.card, selected.keySource, request,
            [&] (std::span<const float> samples)
            {
                file.write (samples);
                summary.add (samples);
            },
            [&] (double fraction)
            {
                progress.show (fraction);
                return ! interruption.isWanted();
            });
    }
    if (! finished)
    {
        err << "stopwright: Stopped before the end; nothing was written.\n";
        return ExitStatus::interrupted;
    }

    file.keep();
    out << outFile_.string() << ": " << printable (selected.card.name, DocumentLimits::titleCharacters) << ", "
        << selected.tuningWords << ", " << fixedNumber (static_cast<double> (summary.frames) / rateHz_, 3) << " s at "
        << rateHz_ << " Hz, peak " << peakWords (summary, scale()) << '\n';
    return ExitStatus::success;
}

} // namespace stopwright
