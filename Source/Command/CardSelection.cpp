// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CardSelection.h"

#include "Circuit/NetlistCheck.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <system_error>

namespace stopwright
{

namespace
{

std::string divisionOf (const Instrument& instrument,
                        const std::filesystem::path& instrumentFile,
                        const std::filesystem::path& cardFile)
{
    const auto isOurs = [&] (const StopTablet& stop)
    {
        std::error_code ignored; // a card that is not there is not ours
        return ! stop.cardFile.empty()
               && std::filesystem::equivalent (instrumentFile.parent_path() / stop.cardFile, cardFile, ignored);
    };
    const auto stop = std::find_if (instrument.stops.begin(), instrument.stops.end(), isOurs);
    return stop == instrument.stops.end() ? instrument.divisions.front().name : stop->division;
}

} // namespace

void CardSelection::declare (CLI::App& app)
{
    app.add_option ("CARD", cardFile_, "The stop card")->required()->type_name ("FILE");
    auto* const instrument = declareInstrument (app);
    app.add_option ("--division", division_,
                    "The keyboard of the instrument (default: where the card's tablet is, else the first)")
        ->type_name ("NAME")
        ->needs (instrument);
}

void CardSelection::declareForBoth (CLI::App& app)
{
    app.add_option ("DOCUMENT", cardFile_, "A stop card or an instrument")->required()->type_name ("FILE");
    declareInstrument (app);
    app.add_option ("--division", division_,
                    "The keyboard (default: where the card's tablet is, else the first; of an instrument, where its "
                    "first drawn stop is)")
        ->type_name ("NAME");
}

CLI::Option* CardSelection::declareInstrument (CLI::App& app)
{
    return app
        .add_option ("--instrument", instrumentFile_,
                     "Play a card from this instrument's generators instead of equal temperament at A4 = 440 Hz")
        ->type_name ("FILE");
}

SelectedCard CardSelection::load() const
{
    if (instrumentFile_.empty() && ! division_.empty())
        throw Error (cardFile_.string()
                     + ": a card has no divisions; name the instrument it is played from with --instrument.");
    auto card = readSoundCard (cardFile_);
    if (instrumentFile_.empty())
    {
        constexpr int keyCount = 128;
        auto keySource = keySourceForCardAlone (card);
        keySource.lowestKey = 0;
        keySource.highestKey = keyCount - 1;
        return { std::move (card), std::move (keySource), "equal temperament at A4 = 440 Hz" };
    }

    const auto instrument = readInstrument (instrumentFile_);
    const auto division = division_.empty() ? divisionOf (instrument, instrumentFile_, cardFile_) : division_;
    auto keySource = keySourceOf (instrument, division, card);
    return { std::move (card), std::move (keySource), "generators of " + instrument.name + ", " + division };
}

void requireSoundCard (const Card& card, const std::filesystem::path& file)
{
    try
    {
        requireSound (netlistOf (card));
    }
    catch (const Error& fault)
    {
        throw DocumentError (file.string(), {}, fault.what());
    }
}

Card readSoundCard (const std::filesystem::path& file)
{
    auto card = readCard (file);
    requireSoundCard (card, file);
    return card;
}

} // namespace stopwright
