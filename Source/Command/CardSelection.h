// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"

#include <filesystem>
#include <string>

namespace CLI
{
class App;
class Option;
} // namespace CLI

namespace stopwright
{

/// A card, and what its keys are played from.
struct SelectedCard
{
    Card card;
    KeySource keySource;
    std::string tuningWords; ///< "equal temperament at A4 = 440 Hz", or whose generators
};

/// The card of a command line, and perhaps the instrument whose generators play it. Threading: [control].
class CardSelection
{
public:
    /// Adds CARD, --instrument and --division.
    void declare (CLI::App& app);

    /// Adds the same for a job that takes an instrument's document in the place of a card as well.
    void declareForBoth (CLI::App& app);

    /// A card alone is tuned in equal temperament at A4 = 440 Hz and answers every key there is, for a compass is a
    /// matter of an instrument. In an instrument it has the division that is named, else that of the tablet that names
    /// this card, else the first. Fails: Error on a document that cannot be used or a network that is not sound.
    SelectedCard load() const;

    /// The card, or the document that stands in its place.
    const std::filesystem::path& cardFile() const noexcept { return cardFile_; }

    const std::filesystem::path& instrumentFile() const noexcept { return instrumentFile_; }

    /// Empty when none is named.
    const std::string& division() const noexcept { return division_; }

private:
    CLI::Option* declareInstrument (CLI::App& app);

    std::filesystem::path cardFile_;
    std::filesystem::path instrumentFile_;
    std::string division_;
};

/// Makes sure that the network of a card from `file` can be computed. Fails: DocumentError. Threading: [control].
void requireSoundCard (const Card& card, const std::filesystem::path& file);

/// Reads a card and makes sure that its network can be computed. Fails: DocumentError. Threading: [control].
Card readSoundCard (const std::filesystem::path& file);

} // namespace stopwright
