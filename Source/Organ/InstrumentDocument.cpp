// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/InstrumentDocument.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/TuningFields.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// Refuses a name that an earlier one of the list has.
template <typename Item>
void requireFreshName (FieldReader& fields, const std::vector<Item>& earlier, const std::string& name)
{
    if (std::any_of (earlier.begin(), earlier.end(), [&name] (const Item& item) { return item.name == name; }))
        fields.refuse ("name", "the name " + quotedText (name) + " stands twice; give each a name of its own.");
}

Division readDivision (FieldReader& fields, const Instrument& instrument)
{
    Division division;
    division.name = fields.name ("name");
    fields.setLabel ("division " + partWords (division.name));
    requireFreshName (fields, instrument.divisions, division.name);
    division.lowestKey = readKey (fields, "lowestKey");
    division.highestKey = readKey (fields, "highestKey");
    if (division.lowestKey > division.highestKey)
        fields.refuse ("highestKey", "the highest key " + keyName (division.highestKey) + " lies below the lowest, "
                                         + keyName (division.lowestKey) + ".");
    return division;
}

JsonTree divisionTree (const Division& division)
{
    JsonTree tree;
    tree["name"] = division.name;
    tree["lowestKey"] = keyName (division.lowestKey);
    tree["highestKey"] = keyName (division.highestKey);
    return tree;
}

KeyedBus readBus (FieldReader& fields, const Instrument& instrument)
{
    KeyedBus bus;
    bus.name = fields.name ("name");
    fields.setLabel ("bus " + partWords (bus.name));
    requireFreshName (fields, instrument.keyedBuses, bus.name);
    const auto source = readWaveSource (fields);
    bus.footage = source.footage;
    bus.wave = source.wave;
    bus.voltsPeakToPeak = source.voltsPeakToPeak;
    bus.sourceOhms = source.sourceOhms;
    return bus;
}

JsonTree busTree (const KeyedBus& bus)
{
    JsonTree tree;
    tree["name"] = bus.name;
    writeWaveSource ({ bus.wave, bus.footage, bus.voltsPeakToPeak, bus.sourceOhms }, tree);
    return tree;
}

StopTablet readStop (FieldReader& fields, const Instrument& instrument)
{
    constexpr std::size_t longestPath = 1024;
    StopTablet stop;
    stop.name = fields.name ("tablet");
    fields.setLabel ("stop " + partWords (stop.name));
    stop.division = fields.name ("division");
    const auto isItsDivision = [&stop] (const Division& division) { return division.name == stop.division; };
    if (std::none_of (instrument.divisions.begin(), instrument.divisions.end(), isItsDivision))
        fields.refuse ("division", "there is no division " + quotedText (stop.division) + " among the divisions.");
    stop.cardFile = fields.freeText ("card", longestPath);
    if (stop.cardFile.starts_with ('/') || stop.cardFile.find ('\0') != std::string::npos)
        fields.refuse ("card", "the card must be a file name that starts from the folder of this document.");
    stop.proposed = fields.flag ("proposed", stop.proposed);
    return stop;
}

JsonTree stopTree (const StopTablet& stop)
{
    JsonTree tree;
    tree["tablet"] = stop.name;
    tree["division"] = stop.division;
    if (! stop.cardFile.empty())
        tree["card"] = stop.cardFile;
    if (stop.proposed)
        tree["proposed"] = true;
    return tree;
}

/// Reads a list of named things, each with what is unknown in it.
template <typename Item>
void readList (std::vector<FieldReader> objects,
               std::string_view kind,
               const Instrument& instrument,
               UnknownFieldStore& unknown,
               std::vector<Item>& items,
               Item (*readItem) (FieldReader&, const Instrument&))
{
    for (auto& fields : objects)
    {
        items.push_back (readItem (fields, instrument));
        unknown.take (kind, items.back().name, fields);
    }
}

template <typename Item>
JsonTree listTree (std::string_view kind,
                   const std::vector<Item>& items,
                   UnknownFieldSource& unknown,
                   JsonTree (*itemTree) (const Item&))
{
    auto list = JsonTree::array();
    for (const auto& item : items)
    {
        list.push_back (itemTree (item));
        unknown.putInto (list.back(), kind, item.name);
    }
    return list;
}

} // namespace

Instrument parseInstrument (std::string_view text, std::string_view origin)
{
    const std::string from (origin);
    const auto tree = parseJson (text, from);
    FieldReader document (tree, from, {}, {});
    requireKind (document, "instrument");

    Instrument result;
    UnknownFieldStore unknown (result.unknownFields);
    result.name = document.freeText ("name", DocumentLimits::titleCharacters);
    result.note = document.freeText ("note", DocumentLimits::bytes);
    result.tuning = readTuning (document, unknown);
    result.keyer = readKeyer (document, unknown);

    auto divisions = document.objects ("divisions", "division", 1, DocumentLimits::divisions);
    readList (std::move (divisions), "division", result, unknown, result.divisions, readDivision);
    if (document.has ("buses"))
        readList (document.objects ("buses", "bus", 0, DocumentLimits::buses), "bus", result, unknown, result.keyedBuses,
                  readBus);
    if (document.has ("stops"))
        readList (document.objects ("stops", "stop", 0, DocumentLimits::stops), "stop", result, unknown, result.stops,
                  readStop);
    unknown.take ("instrument", {}, document);
    return result;
}

Instrument readInstrument (const std::filesystem::path& file)
{
    return parseInstrument (readDocumentFile (file), file.string());
}

std::string instrumentText (const Instrument& instrument)
{
    UnknownFieldSource unknown (instrument.unknownFields);
    auto document = documentOf ("instrument");
    document["name"] = instrument.name;
    if (! instrument.note.empty())
        document["note"] = instrument.note;
    writeTuning (instrument.tuning, document, unknown);
    writeKeyer (instrument.keyer, document, unknown);
    document["divisions"] = listTree ("division", instrument.divisions, unknown, divisionTree);
    document["buses"] = listTree ("bus", instrument.keyedBuses, unknown, busTree);
    document["stops"] = listTree ("stop", instrument.stops, unknown, stopTree);
    unknown.putInto (document, "instrument", {});
    return layOutJson (document);
}

void writeInstrument (const Instrument& instrument, const std::filesystem::path& file)
{
    writeDocumentFile (instrumentText (instrument), file);
}

std::string documentKind (const std::filesystem::path& file)
{
    const auto from = file.string();
    const auto tree = parseJson (readDocumentFile (file), from);
    FieldReader document (tree, from, {}, {});
    return std::string (documentKindOf (document));
}

} // namespace stopwright
