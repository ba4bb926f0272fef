// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentFields.h"

#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/Spelling.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

namespace stopwright
{

namespace
{

constexpr std::array<std::string_view, 3> kinds { "card", "instrument", "mask" };

std::string withArticle (std::string_view kind)
{
    return std::string (kind == "instrument" ? "an " : "a ").append (kind);
}

/// What to do where a document of another kind is wanted.
std::string wayOut (std::string_view found, std::string_view wanted)
{
    if (wanted == "mask")
        return "name a target mask, such as one of Presets/Masks";
    if (found == "mask")
        return "name " + withArticle (wanted) + ", for a mask is what a stop is compared with";
    return wanted == "card" ? "name the card of one of its tablets"
                            : "name an instrument that has this card at one of its tablets";
}

} // namespace

std::string_view documentKindOf (FieldReader& document)
{
    if (! document.has ("stopwright"))
        document.refuse ({}, "this is not a Stopwright document: the field \"stopwright\": 1 is missing.");

    constexpr ValueRange versions { "document version", Quantity::number, -1e300, 1e300 };
    const auto version = document.quantity ("stopwright", versions);
    if (version != documentVersion)
        document.refuse (
            "stopwright",
            "the document is of version " + numberText (version)
                + ", and this program reads version 1; use the program it was written with, or a later one.");
    return kinds[document.choice ("kind", kinds)];
}

void requireKind (FieldReader& document, std::string_view kind)
{
    const auto found = documentKindOf (document);
    if (found != kind)
        document.refuse ("kind", "this is " + withArticle (found) + ", but " + withArticle (kind) + " is wanted here; "
                                     + wayOut (found, kind) + ".");
}

std::string_view requireCardOrInstrument (FieldReader& document)
{
    const auto found = documentKindOf (document);
    if (found == "mask")
        document.refuse ("kind", "this is a mask, but a card or an instrument is wanted here; name one of these, for a "
                                 "mask is what a stop is compared with.");
    return found;
}

JsonTree documentOf (std::string_view kind)
{
    return { { "stopwright", documentVersion }, { "kind", kind } };
}

int readPolarity (FieldReader& fields)
{
    const int polarity = fields.whole ("polarity", -1, 1, 1);
    if (polarity == 0)
        fields.refuse ("polarity", "'polarity' must be 1 or -1, not 0.");
    return polarity;
}

std::string readCardFile (FieldReader& fields, std::string_view key)
{
    auto path = fields.freeText (key, DocumentLimits::pathCharacters);
    if (path.starts_with ('/') || path.find ('\0') != std::string::npos)
        fields.refuse (key, "the card must be a file name that starts from the folder of this document.");
    return path;
}

JsonTree quantityTree (double value, Quantity quantity)
{
    return value == 0.0 ? JsonTree (0) : JsonTree (formatEngineering (value, quantity));
}

JsonTree numberTree (double value)
{
    constexpr double largestExact = 1e15;
    const bool isWhole = std::abs (value) <= largestExact && value == std::floor (value);
    return isWhole ? JsonTree (static_cast<std::int64_t> (value)) : JsonTree (value);
}

JsonTree numbersTree (std::span<const double> values)
{
    auto list = JsonTree::array();
    for (const double value : values)
        list.push_back (numberTree (value));
    return list;
}

std::string unknownFieldPlace (std::string_view kind, const std::string& name, std::map<std::string, int>& uses)
{
    const auto place = std::string (kind) + (name.empty() ? std::string() : ":" + name);
    const auto use = ++uses[place];
    return use == 1 ? place : place + "#" + std::to_string (use);
}

void UnknownFieldStore::take (std::string_view kind, const std::string& name, const FieldReader& reader)
{
    const auto place = unknownFieldPlace (kind, name, uses_);
    if (auto unknown = reader.unknownFields(); ! unknown.empty())
        fields_.insert_or_assign (place, std::move (unknown));
}

void UnknownFieldSource::putInto (JsonTree& tree, std::string_view kind, const std::string& name)
{
    const auto found = fields_.find (unknownFieldPlace (kind, name, uses_));
    if (found == fields_.end())
        return;
    const auto unknown = parseJson (found->second, "kept fields of " + found->first);
    for (const auto& [key, value] : unknown.items())
        if (! tree.contains (key))
            tree[key] = value;
}

} // namespace stopwright
