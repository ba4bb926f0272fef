// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardDocument.h"

#include "Circuit/CircuitLimits.h"
#include "Circuit/FindingWords.h"
#include "Organ/AsFoundFields.h"
#include "Organ/DocumentFields.h"
#include "Organ/DocumentFile.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PartFields.h"

namespace stopwright
{

namespace
{

Tap readTap (FieldReader& fields, UnknownFieldStore& unknown)
{
    Tap tap;
    tap.name = fields.name ("name");
    fields.setLabel ("tap " + partWords (tap.name));

    takeWaveSource (tap, readWaveSource (fields));
    tap.node = fields.name ("node");
    tap.polarity = readPolarity (fields);
    tap.asFound = readTapAsFound (fields, tap.name, unknown);
    return tap;
}

JsonTree tapTree (const Tap& tap, UnknownFieldSource& unknown)
{
    JsonTree tree;
    tree["name"] = tap.name;
    writeWaveSource (waveSourceOf (tap), tree);
    tree["node"] = tap.node;
    if (tap.polarity != 1)
        tree["polarity"] = tap.polarity;
    writeAsFound (tap.asFound, tap.name, tree, unknown);
    return tree;
}

} // namespace

Card parseCard (std::string_view text, std::string_view origin)
{
    const std::string from (origin);
    const auto tree = parseJson (text, from);
    FieldReader document (tree, from, {}, {});
    requireKind (document, "card");

    Card card;
    UnknownFieldStore unknown (card.unknownFields);
    card.name = document.freeText ("name", DocumentLimits::titleCharacters);
    card.note = document.freeText ("note", DocumentLimits::bytes);
    for (auto& fields : document.objects ("taps", "tap", 1, CircuitLimits::sources))
    {
        card.taps.push_back (readTap (fields, unknown));
        unknown.take ("tap", card.taps.back().name, fields);
    }
    for (auto& fields : document.objects ("parts", "part", 0, CircuitLimits::parts))
    {
        card.parts.push_back (readPart (fields));
        unknown.take ("part", card.parts.back().name, fields);
    }
    card.output = document.name ("output");
    unknown.take ("card", {}, document);
    return card;
}

Card readCard (const std::filesystem::path& file)
{
    return parseCard (readDocumentFile (file), file.string());
}

std::string cardText (const Card& card)
{
    UnknownFieldSource unknown (card.unknownFields);
    auto document = documentOf ("card");
    document["name"] = card.name;
    if (! card.note.empty())
        document["note"] = card.note;

    auto taps = JsonTree::array();
    for (const auto& tap : card.taps)
    {
        taps.push_back (tapTree (tap, unknown));
        unknown.putInto (taps.back(), "tap", tap.name);
    }
    auto parts = JsonTree::array();
    for (const auto& part : card.parts)
    {
        parts.push_back (partTree (part));
        unknown.putInto (parts.back(), "part", part.name);
    }
    document["taps"] = std::move (taps);
    document["parts"] = std::move (parts);
    document["output"] = card.output;
    unknown.putInto (document, "card", {});
    return layOutJson (document);
}

void writeCard (const Card& card, const std::filesystem::path& file)
{
    writeDocumentFile (cardText (card), file);
}

} // namespace stopwright
