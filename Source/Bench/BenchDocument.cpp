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

SavedTrials savedTrialsOf (const BenchDocument& document, const std::string& name)
{
    const auto file = document.fileOfCard (name);
    SavedTrials saved;
    saved.fileText = readDocumentFile (file);
    saved.pair.a = readCard (file);
    std::error_code ignored;
    if (const auto second = document.fileOfSecond (name); fs::exists (second, ignored))
    {
        saved.secondFileText = readDocumentFile (second);
        saved.pair.b = readCard (second);
    }
    return saved;
}

void readTrials (BenchDocument& document, const std::string& name)
{
    auto saved = savedTrialsOf (document, name);
    document.trials[name] = saved.pair;
    document.savedTrials[name] = std::move (saved);
}

} // namespace

BenchDocument BenchDocument::open (const fs::path& file)
{
    BenchDocument document;
    if (isInstrument (file))
    {
        document.instrumentFileText = readDocumentFile (file);
        document.instrument = readInstrument (file);
        document.savedInstrument = document.instrument;
        document.instrumentFile = file;
        const int stop = firstStopToShow (*document.instrument);
        if (stop < 0)
            throw Error (file.filename().string() + ": none of its stops has a card; name a card file at a stop.");
        document.takeStop (stop);
        return document;
    }
    document.looseCardFile = file;
    readTrials (document, {});
    return document;
}

void BenchDocument::takeStop (int index)
{
    if (! instrument || index < 0 || static_cast<std::size_t> (index) >= instrument->stops.size())
        throw Error ("There is no such stop in the open document; choose one of the list.");
    const auto& stop = instrument->stops[static_cast<std::size_t> (index)];
    if (stop.cardFile.empty())
        throw Error ("The tablet \"" + stop.name + "\" is blank; choose a stop that has a card.");
    readMissingCard (stop.cardFile);
    stopIndex = index;
}

void BenchDocument::readMissingCard (const std::string& name)
{
    if (! trials.contains (name))
        readTrials (*this, name);
}

fs::path BenchDocument::fileOfCard (const std::string& name) const
{
    return name.empty() ? looseCardFile : cardPath (instrumentFile, name);
}

fs::path BenchDocument::fileOfSecond (const std::string& name) const
{
    auto file = fileOfCard (name);
    return file.empty() ? file : file.replace_filename (file.stem().string() + ".B.json");
}

KeySource BenchDocument::keySource() const
{
    if (! instrument)
        return keySourceForCardAlone (card());
    return keySourceOf (*instrument, instrument->stops[static_cast<std::size_t> (stopIndex)].division, card());
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
                                                              : keySourceForCardAlone (card()).lowestKey;
}

int BenchDocument::highestKey (int division) const
{
    const auto index = static_cast<std::size_t> (division);
    return instrument && index < instrument->divisions.size() ? instrument->divisions[index].highestKey
                                                              : keySourceForCardAlone (card()).highestKey;
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
    const auto name = card().name.empty() ? std::string ("Card without a name") : card().name;
    return instrument && ! instrument->name.empty() ? name + " - " + instrument->name : name;
}

fs::path BenchDocument::folder() const
{
    const auto file = cardFile();
    return (file.empty() ? instrumentFile : file).parent_path();
}

const Card& BenchDocument::savedCard() const noexcept
{
    const auto found = savedTrials.find (cardName());
    if (found == savedTrials.end())
        return card();
    const auto& saved = found->second.pair;
    return trials.at (cardName()).isB && saved.b ? *saved.b : saved.a;
}

bool BenchDocument::isCardUnsaved (const std::string& name) const
{
    const auto pair = trials.find (name);
    const auto saved = savedTrials.find (name);
    if (pair == trials.end() || saved == savedTrials.end())
        return pair != trials.end();
    return ! isSamePair (pair->second, saved->second.pair);
}

bool BenchDocument::isInstrumentUnsaved() const
{
    return ! isSameInstrument (instrument, savedInstrument);
}

bool BenchDocument::isUnsaved() const
{
    return isInstrumentUnsaved()
           || std::ranges::any_of (trials, [this] (const auto& each) { return isCardUnsaved (each.first); });
}

std::vector<std::string> BenchDocument::unsavedNames() const
{
    std::vector<std::string> names;
    names.reserve (trials.size() + 1);
    for (const auto& [name, pair] : trials)
        if (isCardUnsaved (name))
            names.push_back (pair.a.name.empty() ? name : pair.a.name);
    if (isInstrumentUnsaved())
        names.push_back (instrument->name.empty() ? instrumentFile.filename().string() : instrument->name);
    return names;
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
