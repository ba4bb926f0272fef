// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/MaskDocument.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentFields.h"
#include "Organ/DocumentFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/TuningFields.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

/// In the order of Certainty and of MaskReference.
constexpr std::array<std::string_view, 3> certaintyWords { "published", "measured", "common practice" };
constexpr std::array<std::string_view, 2> referenceWords { "strongest", "first" };

constexpr ValueRange levelRange { "level in dB", Quantity::number, -200.0, 60.0 };
constexpr ValueRange toleranceRange { "tolerance in dB", Quantity::number, 0.0, 60.0 };
constexpr ValueRange centreRange { "centre of the band", Quantity::frequency, 10.0, 30000.0 };
constexpr ValueRange widthRange { "width of the band", Quantity::frequency, 1.0, 30000.0 };
constexpr int highestHarmonic = 2000;

void requireSource (const FieldReader& fields, Certainty certainty, const std::string& source)
{
    if (certainty == Certainty::published && source.empty())
        fields.refuse ({}, "what is published has a 'source'; name the work, or call it \"common practice\".");
}

void requireOrder (const FieldReader& fields, int lowest, int highest)
{
    if (lowest > highest)
        fields.refuse ("lowestKey", "the lowest key " + keyName (lowest) + " lies above the highest, "
                                        + keyName (highest) + "; exchange them.");
}

MaskWish readWish (FieldReader& fields, const TargetMask& mask)
{
    MaskWish wish;
    wish.levelDb = fields.quantity ("levelDb", levelRange);
    wish.toleranceDb = fields.quantity ("toleranceDb", toleranceRange);
    if (fields.has ("lowestKey"))
        wish.lowestKey = readKey (fields, "lowestKey");
    if (fields.has ("highestKey"))
        wish.highestKey = readKey (fields, "highestKey");
    requireOrder (fields, wish.lowestKey.value_or (mask.lowestKey), wish.highestKey.value_or (mask.highestKey));
    wish.source = fields.freeText ("source", DocumentLimits::sourceCharacters);
    if (fields.has ("certainty"))
    {
        wish.certainty = static_cast<Certainty> (fields.choice ("certainty", certaintyWords));
        requireSource (fields, *wish.certainty, wish.source);
    }
    return wish;
}

void writeWish (const MaskWish& wish, JsonTree& tree)
{
    tree["levelDb"] = numberTree (wish.levelDb);
    tree["toleranceDb"] = numberTree (wish.toleranceDb);
    if (wish.lowestKey)
        tree["lowestKey"] = keyName (*wish.lowestKey);
    if (wish.highestKey)
        tree["highestKey"] = keyName (*wish.highestKey);
    if (wish.certainty)
        tree["certainty"] = certaintyWords[static_cast<std::size_t> (*wish.certainty)];
    if (! wish.source.empty())
        tree["source"] = wish.source;
}

/// Two wishes for one harmonic are one too many where both hold.
void requireOneWish (const FieldReader& fields, const TargetMask& mask, const MaskHarmonic& harmonic)
{
    const auto meets = [&] (const MaskHarmonic& other)
    {
        const auto lowest = [&] (const MaskWish& wish) { return wish.lowestKey.value_or (mask.lowestKey); };
        const auto highest = [&] (const MaskWish& wish) { return wish.highestKey.value_or (mask.highestKey); };
        return other.harmonic == harmonic.harmonic && lowest (other.wish) <= highest (harmonic.wish)
               && lowest (harmonic.wish) <= highest (other.wish);
    };
    if (std::ranges::any_of (mask.harmonics, meets))
        fields.refuse ("harmonic", "harmonic " + std::to_string (harmonic.harmonic)
                                       + " stands twice for the same keys; leave one out.");
}

void readHarmonics (FieldReader& document, TargetMask& mask, UnknownFieldStore& unknown)
{
    if (! document.has ("harmonics"))
        return;
    for (auto& fields : document.objects ("harmonics", "harmonic entry", 0, DocumentLimits::maskEntries))
    {
        MaskHarmonic harmonic;
        harmonic.harmonic = fields.whole ("harmonic", 1, highestHarmonic);
        fields.setLabel ("harmonic " + std::to_string (harmonic.harmonic));
        harmonic.atMost = fields.flag ("atMost", false);
        harmonic.wish = readWish (fields, mask);
        requireOneWish (fields, mask, harmonic);
        unknown.take ("harmonic", std::to_string (harmonic.harmonic), fields);
        mask.harmonics.push_back (std::move (harmonic));
    }
}

void readBands (FieldReader& document, TargetMask& mask, UnknownFieldStore& unknown)
{
    if (! document.has ("bands"))
        return;
    for (auto& fields : document.objects ("bands", "band", 0, DocumentLimits::maskEntries))
    {
        MaskBand band;
        band.name = fields.name ("name");
        fields.setLabel ("band " + partWords (band.name));
        band.centreHz = fields.quantity ("centreHz", centreRange);
        band.widthHz = fields.quantity ("widthHz", widthRange);
        band.wish = readWish (fields, mask);
        unknown.take ("band", band.name, fields);
        mask.bands.push_back (std::move (band));
    }
}

Footage readUnison (FieldReader& document)
{
    const auto text = document.textOrNumber ("unison", "8");
    try
    {
        return Footage::parse (text);
    }
    catch (const Error& fault)
    {
        document.refuse ("unison", fault.what());
    }
}

void writeEntries (const TargetMask& mask, JsonTree& document, UnknownFieldSource& unknown)
{
    auto harmonics = JsonTree::array();
    for (const auto& harmonic : mask.harmonics)
    {
        JsonTree tree { { "harmonic", harmonic.harmonic } };
        if (harmonic.atMost)
            tree["atMost"] = true;
        writeWish (harmonic.wish, tree);
        unknown.putInto (tree, "harmonic", std::to_string (harmonic.harmonic));
        harmonics.push_back (std::move (tree));
    }
    auto bands = JsonTree::array();
    for (const auto& band : mask.bands)
    {
        JsonTree tree { { "name", band.name } };
        tree["centreHz"] = numberTree (band.centreHz);
        tree["widthHz"] = numberTree (band.widthHz);
        writeWish (band.wish, tree);
        unknown.putInto (tree, "band", band.name);
        bands.push_back (std::move (tree));
    }
    document["harmonics"] = std::move (harmonics);
    document["bands"] = std::move (bands);
}

} // namespace

TargetMask parseMask (std::string_view text, std::string_view origin)
{
    const std::string from (origin);
    const auto tree = parseJson (text, from);
    FieldReader document (tree, from, {}, {});
    requireKind (document, "mask");

    TargetMask mask;
    UnknownFieldStore unknown (mask.unknownFields);
    mask.name = document.freeText ("name", DocumentLimits::titleCharacters);
    mask.note = document.freeText ("note", DocumentLimits::bytes);
    mask.unison = readUnison (document);
    mask.reference = static_cast<MaskReference> (document.choice ("levelsRe", referenceWords, 0));
    mask.lowestKey = readKey (document, "lowestKey", keyName (mask.lowestKey));
    mask.highestKey = readKey (document, "highestKey", keyName (mask.highestKey));
    requireOrder (document, mask.lowestKey, mask.highestKey);
    mask.certainty = static_cast<Certainty> (document.choice ("certainty", certaintyWords));
    mask.source = document.freeText ("source", DocumentLimits::sourceCharacters);
    requireSource (document, mask.certainty, mask.source);
    readHarmonics (document, mask, unknown);
    readBands (document, mask, unknown);
    if (mask.harmonics.empty() && mask.bands.empty())
        document.refuse ({}, "the mask wants nothing; give it 'harmonics' or 'bands'.");
    unknown.take ("mask", {}, document);
    return mask;
}

TargetMask readMask (const std::filesystem::path& file)
{
    return parseMask (readDocumentFile (file), file.string());
}

std::string maskText (const TargetMask& mask)
{
    UnknownFieldSource unknown (mask.unknownFields);
    auto document = documentOf ("mask");
    document["name"] = mask.name;
    if (! mask.note.empty())
        document["note"] = mask.note;
    document["unison"] = mask.unison.text();
    document["levelsRe"] = referenceWords[static_cast<std::size_t> (mask.reference)];
    document["lowestKey"] = keyName (mask.lowestKey);
    document["highestKey"] = keyName (mask.highestKey);
    document["certainty"] = certaintyWords[static_cast<std::size_t> (mask.certainty)];
    if (! mask.source.empty())
        document["source"] = mask.source;
    writeEntries (mask, document, unknown);
    unknown.putInto (document, "mask", {});
    return layOutJson (document);
}

void writeMask (const TargetMask& mask, const std::filesystem::path& file)
{
    writeDocumentFile (maskText (mask), file);
}

} // namespace stopwright
