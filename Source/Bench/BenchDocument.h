// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// What is open: an instrument with one of its stops in hand, or a card alone.
struct BenchDocument
{
    std::optional<Instrument> instrument;
    std::filesystem::path instrumentFile;
    std::filesystem::path cardFile; ///< empty for a card that has never been saved
    int stopIndex = -1;             ///< in Instrument::stops; -1 without an instrument

    Card card;
    std::string savedText;        ///< of the card as it was read or saved
    std::string fileText;         ///< what its file held then
    double savedMixingOhms = 0.0; ///< of the stop in hand, as the instrument stands on disk

    /// Opens a document of either kind; of an instrument, the proposed stop that has a card, else the first that has.
    /// Threading: [control]. Fails: Error with a sentence that names the file.
    static BenchDocument open (const std::filesystem::path& file);

    /// The same instrument with another of its stops in hand; the mixing resistor of the one before goes back to what is
    /// saved. Fails: Error (blank tablet, bad card).
    BenchDocument withStop (int index) const;

    /// Where its file is, the card's before the instrument's; empty when it has none.
    std::filesystem::path folder() const;

    KeySource keySource() const;

    /// The stop in hand, or nullptr for a card alone.
    const StopTablet* stopInHand() const noexcept;

    /// The keyboard the stop in hand is played from: an index into Instrument::divisions, 0 for a card alone.
    int divisionInHand() const noexcept;

    /// The compass of a division; of the card for a card alone.
    int lowestKey (int division) const;
    int highestKey (int division) const;

    /// The MIDI channels that play a division, a bit each from channel 1 on; all for a card alone.
    unsigned midiChannels (int division) const;

    /// "Krummhorn 8 - Larkfield music school", or the card's name.
    std::string title() const;

    /// The mixing resistor of the stop in hand; 0 for a card alone.
    double mixingOhms() const noexcept;
    void setMixingOhms (double ohms) noexcept;

    bool isCardUnsaved() const;

    /// What the card's file holds now, if another program has changed it since it was read or saved here.
    std::optional<std::string> changedFileText() const;

    /// The card's file holds the card as it is.
    void noteCardSaved();

    bool isMixingUnsaved() const noexcept;

    bool isUnsaved() const { return isCardUnsaved() || isMixingUnsaved(); }
};

/// The demonstration organ that comes with the program: an instrument document in a folder Presets/ beside the program,
/// in one of the folders above it, or in share/stopwright/ beside bin/; empty when there is none. Threading: [control].
std::filesystem::path findDemonstrationOrgan (const std::filesystem::path& executable);

} // namespace stopwright
