// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/AsFoundFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentError.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/StopFields.h"
#include "Units/QuotedText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

int numberIn (std::string_view digits)
{
    int number = 0;
    for (const char digit : digits)
        number = 10 * number + (digit - '0');
    return number;
}

/// "2026-11-27", each number in its range; whether the month has that day is not looked at.
bool isDate (std::string_view text)
{
    constexpr std::string_view form = "0000-00-00";
    const auto fits = [] (char wanted, char found)
    { return wanted == '0' ? found >= '0' && found <= '9' : found == '-'; };
    if (text.size() != form.size() || ! std::equal (form.begin(), form.end(), text.begin(), fits))
        return false;
    const int month = numberIn (text.substr (5, 2));
    const int day = numberIn (text.substr (8, 2));
    return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

std::string dateSentence (const std::string& date)
{
    return "the date " + quotedText (date) + " is none; write year, month and day as \"2026-11-27\".";
}

AlterationNote readNote (FieldReader& fields)
{
    AlterationNote note;
    if (fields.has ("date"))
    {
        note.date = fields.shortText ("date");
        if (! isDate (note.date))
            fields.refuse ("date", dateSentence (note.date));
    }
    note.why = fields.freeText ("why", DocumentLimits::whyCharacters);
    return note;
}

/// The name of a mixing bus; empty for none.
std::string readBusOrNone (FieldReader& fields)
{
    auto name = fields.freeText ("bus", DocumentLimits::nameCharacters);
    if (hasControlCharacter (name))
        fields.refuse ("bus", "the name " + quotedText (name) + " has control characters in it; leave them out.");
    return name;
}

void writeNote (const AlterationNote& note, JsonTree& tree)
{
    if (! note.date.empty())
        tree["date"] = note.date;
    if (! note.why.empty())
        tree["why"] = note.why;
}

void write (const AsFoundStop& found, JsonTree& tree)
{
    if (found.division)
        tree["division"] = *found.division;
    if (found.cardFile)
        tree["card"] = *found.cardFile;
    if (found.bus)
        tree["bus"] = *found.bus;
    if (found.mixingOhms)
        tree["mixingOhms"] = quantityTree (*found.mixingOhms, Quantity::resistance);
    if (found.polarity)
        tree["polarity"] = *found.polarity;
    if (found.whenRetired)
        tree["whenRetired"] = retiredWord (*found.whenRetired);
}

void write (const AsFoundTap& found, JsonTree& tree)
{
    if (found.source)
        writeWaveSource (*found.source, tree);
    if (found.node)
        tree["node"] = *found.node;
    if (found.polarity)
        tree["polarity"] = *found.polarity;
}

template <typename Found>
void writeObject (const std::optional<Found>& asFound,
                  std::string_view kind,
                  const std::string& name,
                  JsonTree& owner,
                  UnknownFieldSource& unknown)
{
    if (! asFound)
        return;
    auto tree = JsonTree::object();
    write (*asFound, tree);
    writeNote (asFound->note, tree);
    unknown.putInto (tree, kind, name);
    if (! tree.empty())
        owner["asFound"] = std::move (tree);
}

} // namespace

std::optional<AsFoundStop> readStopAsFound (FieldReader& stop, const std::string& name, UnknownFieldStore& unknown)
{
    if (! stop.has ("asFound"))
        return {};
    auto fields = stop.object ("asFound");
    AsFoundStop found;
    if (fields.has ("division"))
        found.division = fields.name ("division");
    if (fields.has ("card"))
        found.cardFile = readCardFile (fields, "card");
    if (fields.has ("bus"))
        found.bus = readBusOrNone (fields);
    if (fields.has ("mixingOhms"))
        found.mixingOhms = fields.quantity ("mixingOhms", mixingRange);
    if (fields.has ("polarity"))
        found.polarity = readPolarity (fields);
    if (fields.has ("whenRetired"))
        found.whenRetired = readRetired (fields, WhenRetired::grounded);
    found.note = readNote (fields);
    unknown.take (stopAsFound, name, fields);
    return found;
}

std::optional<AsFoundTap> readTapAsFound (FieldReader& tap, const std::string& name, UnknownFieldStore& unknown)
{
    if (! tap.has ("asFound"))
        return {};
    auto fields = tap.object ("asFound");
    AsFoundTap found;
    if (fields.has ("wave"))
        found.source = readWaveSource (fields);
    if (fields.has ("node"))
        found.node = fields.name ("node");
    if (fields.has ("polarity"))
        found.polarity = readPolarity (fields);
    found.note = readNote (fields);
    unknown.take (tapAsFound, name, fields);
    return found;
}

void writeAsFound (const std::optional<AsFoundStop>& asFound,
                   const std::string& name,
                   JsonTree& stop,
                   UnknownFieldSource& unknown)
{
    writeObject (asFound, stopAsFound, name, stop, unknown);
}

void writeAsFound (const std::optional<AsFoundTap>& asFound,
                   const std::string& name,
                   JsonTree& tap,
                   UnknownFieldSource& unknown)
{
    writeObject (asFound, tapAsFound, name, tap, unknown);
}

void requireHeld (const AlterationNote& note)
{
    if (! note.date.empty() && ! isDate (note.date))
        throw Error (capitalised (dateSentence (note.date)));
    if (firstByteNotUtf8 (note.why) != std::string_view::npos)
        throw Error ("The reason has bytes that are no text (UTF-8); type it again.");
    if (characterCount (note.why) > DocumentLimits::whyCharacters)
        throw Error ("The reason is longer than " + std::to_string (DocumentLimits::whyCharacters)
                     + " characters; shorten it, and put the rest into the instrument's note.");
}

} // namespace stopwright
