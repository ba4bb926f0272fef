// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchDocument.h"

#include "Organ/CardDocument.h"
#include "Organ/InstrumentCards.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <algorithm>

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
    if (documentKind (file) == "instrument")
    {
        document.instrument = readInstrument (file);
        document.instrumentFile = file;
        const int stop = firstStopToShow (*document.instrument);
        if (stop < 0)
            throw Error (file.filename().string() + ": none of its stops has a card; name a card file at a stop.");
        return document.withStop (stop);
    }

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
    document.stopIndex = index;
    document.cardFile = cardPath (instrumentFile, stop.cardFile);
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

std::string BenchDocument::title() const
{
    const auto name = card.name.empty() ? std::string ("Card without a name") : card.name;
    return instrument && ! instrument->name.empty() ? name + " - " + instrument->name : name;
}

bool BenchDocument::isUnsaved() const
{
    return cardText (card) != savedText;
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
