// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/InstrumentCards.h"

#include "Circuit/FindingWords.h"
#include "Organ/CardDocument.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <map>

namespace stopwright
{

namespace
{

/// Reads cards of one document and remembers them, and what was wrong with them.
class CardShelf
{
public:
    explicit CardShelf (const std::filesystem::path& document) : document_ (document) {}

    /// Fails: Error.
    const Card& card (const std::string& cardFile)
    {
        const auto path = cardPath (document_, cardFile);
        auto found = shelf_.find (path);
        if (found == shelf_.end())
            found = shelf_.emplace (path, read (path)).first;
        if (! found->second.card)
            throw Error (found->second.fault);
        return *found->second.card;
    }

private:
    struct Reading
    {
        std::optional<Card> card;
        std::string fault;
    };

    static Reading read (const std::filesystem::path& path)
    {
        try
        {
            return { readCard (path), {} };
        }
        catch (const Error& fault)
        {
            return { {}, fault.what() };
        }
    }

    const std::filesystem::path& document_;
    std::map<std::filesystem::path, Reading> shelf_;
};

std::optional<Card> cardOfStop (const StopTablet& stop, CardShelf& shelf, std::vector<std::string>& errors)
{
    if (stop.cardFile.empty())
        return {};
    try
    {
        return shelf.card (stop.cardFile);
    }
    catch (const Error& fault)
    {
        errors.push_back (std::string (fault.what()) + " (the card of tablet " + partWords (stop.name) + ")");
        return {};
    }
}

std::optional<Card>
    cardOfStage (const Preamp& preamp, const PreampStage& stage, CardShelf& shelf, std::vector<std::string>& errors)
{
    if (stage.kind != StageKind::circuit)
        return {};
    try
    {
        const auto& card = shelf.card (stage.cardFile);
        if (card.taps.size() == 1)
            return card;
        throw Error (quotedText (stage.cardFile) + " has " + std::to_string (card.taps.size())
                     + " taps, but a stage has one input; name a card with exactly one tap.");
    }
    catch (const Error& fault)
    {
        errors.push_back (std::string (fault.what()) + " (the card of stage " + partWords (stage.name) + " in preamp "
                          + partWords (preamp.name) + ")");
        return {};
    }
}

} // namespace

std::filesystem::path cardPath (const std::filesystem::path& document, const std::string& cardFile)
{
    const auto inside = std::filesystem::path (cardFile).lexically_normal();
    if (inside.is_absolute() || inside.empty() || *inside.begin() == "..")
        throw Error ("The card " + quotedText (cardFile) + " lies outside the folder of " + document.filename().string()
                     + "; copy it into that folder and name it from there.");
    return document.parent_path() / inside;
}

InstrumentCards findInstrumentCards (const Instrument& instrument, const std::filesystem::path& document)
{
    InstrumentCards result;
    CardShelf shelf (document);
    for (const auto& stop : instrument.stops)
        result.ofStops.push_back (cardOfStop (stop, shelf, result.errors));
    for (const auto& preamp : instrument.preamps)
    {
        auto& cards = result.ofStages.emplace_back();
        for (const auto& stage : preamp.stages)
            cards.push_back (cardOfStage (preamp, stage, shelf, result.errors));
    }
    return result;
}

InstrumentCards instrumentCards (const Instrument& instrument, const std::filesystem::path& document)
{
    auto cards = findInstrumentCards (instrument, document);
    if (! cards.errors.empty())
        throw Error (cards.errors.front());
    return cards;
}

} // namespace stopwright
