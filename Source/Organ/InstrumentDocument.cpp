// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/InstrumentDocument.h"

#include "Organ/DivisionFields.h"
#include "Organ/DocumentFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/KeyedBusFields.h"
#include "Organ/ListFields.h"
#include "Organ/MixingBusFields.h"
#include "Organ/OutletFields.h"
#include "Organ/PreampFields.h"
#include "Organ/StopFields.h"
#include "Organ/TuningFields.h"

namespace stopwright
{

namespace
{

constexpr ListField divisionList { "divisions", "division", "division", 1, DocumentLimits::divisions };
constexpr ListField keyedBusList { "keyedBuses", "keyedBus", "keyed bus", 0, DocumentLimits::keyedBuses };
constexpr ListField mixingBusList { "mixingBuses", "mixingBus", "mixing bus", 0, DocumentLimits::mixingBuses };
constexpr ListField preampList { "preamps", "preamp", "preamp", 0, DocumentLimits::mixingBuses };
constexpr ListField outletList { "outlets", "outlet", "outlet", 0, DocumentLimits::outlets };
constexpr ListField couplerList { "couplers", "coupler", "coupler", 0, DocumentLimits::couplers };
constexpr ListField stopList { "stops", "stop", "stop", 0, DocumentLimits::stops };

/// What is named is read before what names it.
void readLists (FieldReader& document, Instrument& result, UnknownFieldStore& unknown)
{
    readList (document, divisionList, result, unknown, result.divisions, readDivision);
    readList (document, keyedBusList, result, unknown, result.keyedBuses, readKeyedBus);
    result.contacts = readContacts (document, result, unknown);
    readList (document, mixingBusList, result, unknown, result.mixingBuses, readMixingBus);
    readList (document, outletList, result, unknown, result.outlets, readOutlet);
    readList (document, preampList, result, unknown, result.preamps, readPreamp);
    readList (document, couplerList, result, unknown, result.couplers, readCoupler);
    readList (document, stopList, result, unknown, result.stops, readStop);
}

/// Lists that an instrument may do without are left out when they are empty.
template <typename Item>
void writeList (JsonTree& document,
                const ListField& field,
                const std::vector<Item>& items,
                UnknownFieldSource& unknown,
                JsonTree (*itemTree) (const Item&, UnknownFieldSource&))
{
    if (! items.empty())
        document[std::string (field.key)] = listTree (field, items, unknown, itemTree);
}

void writeLists (const Instrument& instrument, JsonTree& document, UnknownFieldSource& unknown)
{
    document["divisions"] = listTree (divisionList, instrument.divisions, unknown, divisionTree);
    document["keyedBuses"] = listTree (keyedBusList, instrument.keyedBuses, unknown, keyedBusTree);
    writeContacts (instrument, document, unknown);
    writeList (document, mixingBusList, instrument.mixingBuses, unknown, mixingBusTree);
    writeList (document, preampList, instrument.preamps, unknown, preampTree);
    writeList (document, outletList, instrument.outlets, unknown, outletTree);
    writeList (document, couplerList, instrument.couplers, unknown, couplerTree);
    document["stops"] = listTree (stopList, instrument.stops, unknown, stopTree);
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
    readLists (document, result, unknown);
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
    writeLists (instrument, document, unknown);
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

bool isInstrument (const std::filesystem::path& file)
{
    const auto from = file.string();
    const auto tree = parseJson (readDocumentFile (file), from);
    FieldReader document (tree, from, {}, {});
    return requireCardOrInstrument (document) == "instrument";
}

} // namespace stopwright
