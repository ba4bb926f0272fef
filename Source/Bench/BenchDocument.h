// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchWork.h"
#include "Organ/KeySource.h"

#include <filesystem>
#include <optional>
#include <string>

namespace stopwright
{

/// What the files of a card's trials hold, as they were read or last written here.
struct SavedTrials
{
    TrialPair pair;
    std::string fileText;       ///< of the card's file
    std::string secondFileText; ///< of trial B's; empty where there is none
};

/// What is open: the work, where it is kept, and how it stands there. Trial B of a card is a card of its own beside it:
/// "Oboe8.B.json" beside "Oboe8.json". Threading: [control].
struct BenchDocument : BenchWork
{
    std::filesystem::path instrumentFile;
    std::filesystem::path looseCardFile; ///< of a card without an instrument; empty until it is saved

    std::optional<Instrument> savedInstrument;
    std::string instrumentFileText;
    std::map<std::string, SavedTrials> savedTrials; ///< as BenchWork::trials

    /// Opens a document of either kind; of an instrument, the proposed stop that has a card, else the first that has.
    /// Fails: Error with a sentence that names the file.
    static BenchDocument open (const std::filesystem::path& file);

    /// Takes another stop in hand, reading its card where it has not been in hand before.
    /// Fails: Error (blank tablet, bad card); all stays as it was.
    void takeStop (int index);

    /// Reads a card that has not been in hand yet, by the name that tablets give it; nothing else changes. Fails: Error.
    void readMissingCard (const std::string& name);

    const BenchWork& work() const noexcept { return *this; }

    void setWork (const BenchWork& work) { static_cast<BenchWork&> (*this) = work; }

    /// The file of a card by its name in `trials`, and of its trial B. Empty for a loose card that has none.
    std::filesystem::path fileOfCard (const std::string& name) const;
    std::filesystem::path fileOfSecond (const std::string& name) const;

    /// Of the card in hand.
    std::filesystem::path cardFile() const { return fileOfCard (cardName()); }

    /// Where its file is, the card's before the instrument's; empty when it has none.
    std::filesystem::path folder() const;

    KeySource keySource() const;

    /// The keyboard the stop in hand is played from: an index into Instrument::divisions, 0 for a card alone.
    int divisionInHand() const noexcept;

    /// The compass of a division; of the card for a card alone.
    int lowestKey (int division) const;
    int highestKey (int division) const;

    /// The MIDI channels that play a division, a bit each from channel 1 on; all for a card alone.
    unsigned midiChannels (int division) const;

    /// "Krummhorn 8 - Larkfield music school", or the card's name.
    std::string title() const;

    /// The card in hand as its file has it; of trial B where that is in hand and saved.
    const Card& savedCard() const noexcept;

    bool isCardUnsaved (const std::string& name) const;
    bool isInstrumentUnsaved() const;
    bool isUnsaved() const;

    /// What would be lost without saving, for a sentence: the names of changed cards, and of the instrument.
    std::vector<std::string> unsavedNames() const;
};

/// The demonstration organ that comes with the program: an instrument document in a folder Presets/ beside the program,
/// in one of the folders above it, or in share/stopwright/ beside bin/; empty when there is none. Threading: [control].
std::filesystem::path findDemonstrationOrgan (const std::filesystem::path& executable);

} // namespace stopwright
