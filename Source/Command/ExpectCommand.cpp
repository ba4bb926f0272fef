// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ExpectCommand.h"

#include "Command/ExpectWords.h"
#include "Command/NumberText.h"
#include "Command/Options.h"
#include "Organ/DocumentLimits.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/PlainText.h"
#include "Study/BenchWave.h"
#include "Units/Decibels.h"
#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <cmath>
#include <ostream>

namespace stopwright
{

namespace
{

enum Place
{
    atCard,
    atBus,
    atPreamp
};

const std::string& footer()
{
    static const std::string text =
        std::string (
            "Nothing limits the bandwidth of scope and meters here; many meters fall off above 400 to 1000 Hz (common\n"
            "practice). Edges are rounded within a thousandth of a period instead of overshooting. The averaging meter is\n"
            "calibrated for sines. A probe is 1x (1M/100p), 10x (10M/15p), line (10k/100p), or ohms/farads; all these\n"
            "values, 20 nV per root hertz and 2 pF are common practice. Noise is thermal noise of passive parts, and of a\n"
            "virtual earth its amplifier's too; parts of a card that amplify make noise of their own, not told here.\n"
            "Unplayed keys are those of the stop's division; a card by itself counts as 61 keys, C2 to C7.\n"
            "CSV header: ")
        + expectCsvHeader
        + "\nCSV header with --wave: time_s,volts\n"
          "Examples:\n"
          "  stopwright expect Presets/LarkfieldOrgan.json --stop \"Krummhorn 8\" --key \"C2 C4 C6\" --probe 10x\n"
          "  stopwright expect Presets/LarkfieldOrgan.json --stop \"Stopped flute 8\" --at preamp --key C4 --csv\n"
          "  stopwright expect Presets/Krummhorn8.json --key C4 --node t --probe 10k/150p --wave";
    return text;
}

ProbeLoad readProbe (const std::string& text)
{
    if (text == "1x")
        return { 1e6, 100e-12 };
    if (text == "10x")
        return { 10e6, 15e-12 };
    if (text == "line")
        return { 10e3, 100e-12 };
    const auto slash = text.find ('/');
    if (slash == std::string::npos)
        throw Error (quotedText (text) + " must be 1x, 10x, line, or ohms/farads as in 10M/15p");
    const ProbeLoad load { parseEngineering (text.substr (0, slash), Quantity::resistance),
                           parseEngineering (text.substr (slash + 1), Quantity::capacitance) };
    constexpr double leastOhms = 1e-3;
    constexpr double mostOhms = 1e12;
    if (! (load.ohms >= leastOhms && load.ohms <= mostOhms && load.farads >= 0.0 && load.farads <= 1.0))
        throw Error (quotedText (text) + " is out of range, which is 1 milliohm to 1 teraohm and 0 to 1 farad");
    return load;
}

void addProbe (CLI::App& app, std::optional<ProbeLoad>& probe)
{
    app.add_option_function<std::string> (
           "--probe",
           [&probe] (const std::string& text)
           {
               try
               {
                   probe = readProbe (text);
               }
               catch (const Error& fault)
               {
                   throw CLI::ValidationError ("--probe", fault.what());
               }
           },
           "What is connected: 1x, 10x, line, or ohms/farads in parallel")
        ->type_name ("LOAD");
}

void requireKey (const BenchPoint& point, int key)
{
    const KeySource& keys = point.keySource();
    if (key < keys.lowestKey || key > keys.highestKey)
        throw Error ("The key " + keyName (key) + " is not on the stop's keyboard, which goes from "
                     + keyName (keys.lowestKey) + " to " + keyName (keys.highestKey) + "; choose a key within.");
}

BusNoise noiseAt (const BenchPoint& point, const NoiseBand& band, double amplifierVolts)
{
    if (point.isBehindBus())
        return busNoise (*point.rail(), point.bus(), point.state(), band, amplifierVolts,
                         [&] (double hz) { return point.onward (hz); });
    return { thermalNoise ([&] (double hz) { return point.at (hz).ohms; }, band), 1.0 };
}

Expectation expectationOf (const BenchPoint& point, int key, const std::optional<ProbeLoad>& probe)
{
    constexpr double impedanceHz = 1000.0;
    Expectation one;
    one.key = key;
    one.keyHz = point.keySource().tuning.keyHz (key);
    const auto wave = benchWave (point, key);
    if (wave.waves.empty())
        throw Error ("No generator sounds for " + keyName (key)
                     + " at the footages of this card; choose a key nearer to the middle.");
    one.open = meterReadings (wave.waves);
    one.loaded = probe ? meterReadings (benchWave (point, key, probe).waves) : one.open;
    const auto ohms = [&] (double hz) { return point.at (hz).ohms; };
    if (probe)
    {
        one.loadedFundamentalDb = toDecibels (std::abs (probe->ratio (ohms (one.keyHz), one.keyHz)));
        one.cornerHz = cornerOf (*probe, ohms);
    }
    one.sourceOhms = std::abs (ohms (impedanceHz));
    return one;
}

} // namespace

void ExpectCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (
        name(), "What scope and meters will show of a key at a node, what a probe does there, noise and bleed");
    selection_.declareForBoth (*app);
    addName (*app, "--stop", stop_, "The tablet of an instrument");
    addKeys (*app, "--key", keys_, "The keys, one at a time: C4, or \"C2 C3 C4\"")->required();
    auto* const node =
        app->add_option ("--node", node_, "The node of the card (default: its output)")->type_name ("NAME");
    addChoice (*app, "--at", { "card", "bus", "preamp" }, place_,
               "Where in an instrument: on the card (default), on the mixing bus, or behind the preamp")
        ->excludes (node);
    addProbe (*app, probe_);
    addQuantity (*app, "--kelvin", { Quantity::number, 0.0, 1000.0, "K" }, band_.kelvin,
                 "Temperature for thermal noise (default 298.15)");
    addQuantity (*app, "--amplifier-noise", { Quantity::number, 0.0, 1e-3, "V/rtHz" }, amplifierVolts_,
                 "A virtual earth's own noise, volts per root hertz (default 20n, common practice)");
    addQuantity (*app, "--stray", { Quantity::capacitance, 0.0, 1e-6, "F" }, strayFarads_,
                 "Stray capacitance from each unplayed key into its tap (default 2p, common practice)");
    app->add_flag ("--wave", wave_, "Print one period as CSV instead, with the probe if there is one");
    app->add_flag ("--csv", csv_, "Print CSV instead of tables");
    app->footer (footer());
}

BenchPoint ExpectCommand::point() const
{
    const auto& file = selection_.cardFile();
    if (! isInstrument (file))
    {
        if (! stop_.empty() || place_ != atCard)
            throw Error (file.string() + ": a card by itself has no stops and no bus; name an instrument instead.");
        auto selected = selection_.load();
        if (selection_.instrumentFile().empty())
        {
            const auto alone = keySourceForCardAlone (selected.card);
            selected.keySource.lowestKey = alone.lowestKey;
            selected.keySource.highestKey = alone.highestKey;
        }
        return BenchPoint::ofCard (selected.card, selected.keySource, node_);
    }
    if (! selection_.instrumentFile().empty() || ! selection_.division().empty())
        throw Error (file.string()
                     + ": a stop of an instrument has its own generators and division; leave out --instrument and "
                       "--division.");
    if (stop_.empty())
        throw Error (file.string() + ": say which stop of the instrument, as in --stop \"Diapason 8\".");
    const auto instrument = readInstrument (file);
    const auto cards = instrumentCards (instrument, file);
    if (place_ == atBus)
        return BenchPoint::ofBus (instrument, cards, stop_);
    if (place_ == atPreamp)
        return BenchPoint::ofPreamp (instrument, cards, stop_);
    return BenchPoint::ofStop (instrument, cards, stop_, node_);
}

std::string ExpectCommand::placeWords() const
{
    if (place_ == atBus)
        return "the mixing bus";
    if (place_ == atPreamp)
        return "the preamp's output";
    return node_.empty() ? "the card's output" : "node " + printable (node_, DocumentLimits::titleCharacters);
}

void ExpectCommand::printWave (const BenchPoint& point, std::ostream& out) const
{
    if (keys_.size() != 1)
        throw Error ("A wave is of one key; name one.");
    constexpr std::size_t points = 2048;
    const auto wave = benchWave (point, keys_.front(), probe_);
    if (wave.waves.size() != 1)
        throw Error (wave.waves.empty()
                         ? "No generator sounds for " + keyName (keys_.front()) + " at the footages of this card."
                         : "The taps are of several pitch classes (a borrowed mutation is), so their wave never "
                           "repeats; look at a card of octaves, or at the readings.");
    const auto& samples = wave.waves.front();
    const auto step = samples.size() / points;
    out << "time_s,volts\n";
    for (std::size_t index = 0; index < samples.size(); index += step)
        out << csvNumber (static_cast<double> (index) / static_cast<double> (samples.size()) / wave.baseHz.front())
            << ',' << csvNumber (samples[index]) << '\n';
}

ExitStatus ExpectCommand::run (std::ostream& out, std::ostream&)
{
    const auto measured = point();
    if (! stop_.empty())
        for (const int key : keys_)
            requireKey (measured, key);
    if (wave_)
    {
        printWave (measured, out);
        return ExitStatus::success;
    }
    const auto noise = noiseAt (measured, band_, amplifierVolts_);
    std::vector<Expectation> expectations;
    for (const int key : keys_)
    {
        expectations.push_back (expectationOf (measured, key, probe_));
        expectations.back().noise = noise;
        expectations.back().bleed = bleedLevels (measured, key, strayFarads_);
    }
    if (csv_)
    {
        printExpectationsCsv (expectations, out);
        return ExitStatus::success;
    }
    const auto& title = stop_.empty() ? measured.card().name : stop_;
    out << printable (title, DocumentLimits::titleCharacters) << " at " << placeWords() << "\n\n";
    printExpectationsTable (expectations, probe_, band_, strayFarads_, out);
    return ExitStatus::success;
}

} // namespace stopwright
