// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchDocument.h"

#include "Organ/CardDocument.h"
#include "Organ/DocumentFile.h"
#include "Organ/InstrumentCards.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

namespace fs = std::filesystem;

/// The proposed stop with a card, else the first with a card, else -1.
int firstStopToShow (const Instrument& instrument)
{
    int firstWithCard = -1;
    for (std::size_t index = 0; index < instrument.stops.size(); ++index)
    {
        const auto& stop = instrument.stops[index];
        if (stop.cardFile.empty())
            continue;
        if (stop.proposed)
            return static_cast<int> (index);
        if (firstWithCard < 0)
            firstWithCard = static_cast<int> (index);
    }
    return firstWithCard;
}

fs::path instrumentIn (const fs::path& folder)
{
    std::error_code ignored;
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator (folder, ignored))
    {
        if (entry.path().extension() == ".json")
            files.push_back (entry.path());
    }
    std::sort (files.begin(), files.end());

    for (const auto& file : files)
    {
        try
        {
            if (documentKind (file) == "instrument")
                return file;
        }
        catch (const Error&)
        {
            continue; // a file of another kind in the folder is no reason to find nothing
        }
    }
    return {};
}

} // namespace

BenchDocument BenchDocument::open (const fs::path& file)
{
    BenchDocument document;
    if (isInstrument (file))
    {
        document.instrument = readInstrument (file);
        document.instrumentFile = file;
        const int stop = firstStopToShow (*document.instrument);
        if (stop < 0)
            throw Error (file.filename().string() + ": none of its stops has a card; name a card file at a stop.");
        return document.withStop (stop);
    }

    document.fileText = readDocumentFile (file);
    document.card = readCard (file);
    document.cardFile = file;
    document.savedText = cardText (document.card);
    return document;
}

BenchDocument BenchDocument::withStop (int index) const
{
    if (! instrument || index < 0 || static_cast<std::size_t> (index) >= instrument->stops.size())
        throw Error ("There is no such stop in the open document; choose one of the list.");

    const auto& stop = instrument->stops[static_cast<std::size_t> (index)];
    if (stop.cardFile.empty())
        throw Error ("The tablet \"" + stop.name + "\" is blank; choose a stop that has a card.");

    BenchDocument document = *this;
    document.setMixingOhms (savedMixingOhms);
    document.stopIndex = index;
    document.savedMixingOhms = document.mixingOhms();
    document.cardFile = cardPath (instrumentFile, stop.cardFile);
    document.fileText = readDocumentFile (document.cardFile);
    document.card = readCard (document.cardFile);
    document.savedText = cardText (document.card);
    return document;
}

KeySource BenchDocument::keySource() const
{
    if (! instrument)
        return keySourceForCardAlone (card);
    return keySourceOf (*instrument, instrument->stops[static_cast<std::size_t> (stopIndex)].division, card);
}

const StopTablet* BenchDocument::stopInHand() const noexcept
{
    const auto index = static_cast<std::size_t> (stopIndex);
    return instrument && stopIndex >= 0 && index < instrument->stops.size() ? &instrument->stops[index] : nullptr;
}

int BenchDocument::divisionInHand() const noexcept
{
    const auto* const stop = stopInHand();
    if (stop == nullptr)
        return 0;
    const auto found = std::ranges::find (instrument->divisions, stop->division, &Division::name);
    return found == instrument->divisions.end() ? 0 : static_cast<int> (found - instrument->divisions.begin());
}

int BenchDocument::lowestKey (int division) const
{
    const auto index = static_cast<std::size_t> (division);
    return instrument && index < instrument->divisions.size() ? instrument->divisions[index].lowestKey
                                                              : keySourceForCardAlone (card).lowestKey;
}

int BenchDocument::highestKey (int division) const
{
    const auto index = static_cast<std::size_t> (division);
    return instrument && index < instrument->divisions.size() ? instrument->divisions[index].highestKey
                                                              : keySourceForCardAlone (card).highestKey;
}

unsigned BenchDocument::midiChannels (int division) const
{
    constexpr unsigned everyChannel = 0xffffU;
    if (! instrument)
        return everyChannel;

    // As InstrumentVoice::divisionOfChannel: what no division claims goes to the first one without a channel.
    const auto bitOf = [] (const Division& each)
    { return each.midiChannel ? 1U << static_cast<unsigned> (*each.midiChannel - 1) : 0U; };
    const auto& divisions = instrument->divisions;
    unsigned claimed = 0;
    for (const auto& each : divisions)
        claimed |= bitOf (each);
    const auto index = static_cast<std::size_t> (division);
    if (index >= divisions.size())
        return 0;
    if (divisions[index].midiChannel)
        return bitOf (divisions[index]);
    const auto unbound = std::ranges::find (divisions, std::optional<int>(), &Division::midiChannel);
    return unbound == divisions.begin() + division ? everyChannel & ~claimed : 0;
}

std::string BenchDocument::title() const
{
    const auto name = card.name.empty() ? std::string ("Card without a name") : card.name;
    return instrument && ! instrument->name.empty() ? name + " - " + instrument->name : name;
}

fs::path BenchDocument::folder() const
{
    return (cardFile.empty() ? instrumentFile : cardFile).parent_path();
}

double BenchDocument::mixingOhms() const noexcept
{
    const auto* const stop = stopInHand();
    return stop != nullptr ? stop->mixingOhms : 0.0;
}

void BenchDocument::setMixingOhms (double ohms) noexcept
{
    if (stopInHand() != nullptr)
        instrument->stops[static_cast<std::size_t> (stopIndex)].mixingOhms = ohms;
}

bool BenchDocument::isCardUnsaved() const
{
    return cardText (card) != savedText;
}

std::optional<std::string> BenchDocument::changedFileText() const
{
    std::error_code ignored;
    if (cardFile.empty() || ! fs::exists (cardFile, ignored))
        return {};
    auto text = readDocumentFile (cardFile);
    return text == fileText ? std::nullopt : std::optional (std::move (text));
}

void BenchDocument::noteCardSaved()
{
    savedText = cardText (card);
    fileText = readDocumentFile (cardFile);
}

bool BenchDocument::isMixingUnsaved() const noexcept
{
    return mixingOhms() != savedMixingOhms;
}

fs::path findDemonstrationOrgan (const fs::path& executable)
{
    std::error_code ignored;
    for (auto folder = fs::weakly_canonical (executable, ignored).parent_path(); ! folder.empty();
         folder = folder.parent_path())
    {
        for (const auto& candidate : { folder / "Presets", folder / "share" / "stopwright" / "Presets" })
        {
            if (fs::is_directory (candidate, ignored))
            {
                if (auto found = instrumentIn (candidate); ! found.empty())
                    return found;
            }
        }
        if (folder == folder.root_path())
            break;
    }
    return {};
}

} // namespace stopwright
