// SPDX-License-Identifier: GPL-3.0-or-later
//
// The whole organ with one thing wrong at a time, given to the loader and to the schema alike.
#include "Organ/InstrumentDocument.h"
#include "Organ/SampleDocuments.h"
#include "Organ/SchemaChecker.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

/// A place in the document (RFC 6901) and the JSON text that stands there instead; empty takes the field out.
struct Change
{
    std::string place;
    std::string value;
};

Json whole()
{
    return Json::parse (textOf (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/instrument-whole.json"));
}

Json changed (const Change& change)
{
    auto document = whole();
    const Json::json_pointer place (change.place);
    if (! change.value.empty())
        document[place] = Json::parse (change.value);
    else
        document.at (place.parent_pointer()).erase (place.back());
    return document;
}

/// The JSON path the loader refuses a document for, or "accepted".
std::string refusedAt (const Json& document)
{
    try
    {
        parseInstrument (document.dump(), "organ.json");
        return "accepted";
    }
    catch (const DocumentError& error)
    {
        return error.where();
    }
}

void expectRefusal (const Change& change, bool schemaCanTell)
{
    static const SchemaChecker schema ("instrument");
    const auto document = changed (change);
    const auto at = refusedAt (document);
    EXPECT_TRUE (at.starts_with (change.value.empty() ? Json::json_pointer (change.place).parent_pointer().to_string()
                                                      : change.place)
                 || change.place.starts_with (at + "/"))
        << change.place << " = " << change.value << ": " << at;
    EXPECT_NE (at, "") << change.place;
    EXPECT_NE (schema.accepts (document), schemaCanTell) << change.place << " = " << change.value;
}

const std::vector<Change>& badForBoth()
{
    static const std::vector<Change> changes {
        { "/divisions/0/midiChannel", "0" },
        { "/divisions/0/midiChannel", "17" },
        { "/divisions/0/midiChannel", "1.5" },
        { "/divisions/0/midiChannel", R"("1")" },
        { "/keyedBuses", "{}" },
        { "/keyedBuses/1/collectorOhms", "0" },
        { "/keyedBuses/1/collectorOhms", R"("100k farads")" },
        { "/keyedBuses/1/loadOhms", "-1" },
        { "/keyedBuses/1/loadOhms", "true" },
        { "/keyedBuses/1/keyer", R"("rc")" },
        { "/keyedBuses/1/keyer/shape", R"("slow")" },
        { "/keyedBuses/1/keyer/bleedDb", "3" },
        { "/contacts", "[]" },
        { "/contacts/order", R"("S8")" },
        { "/contacts/order/0", "8" },
        { "/contacts/order/1", R"("S8")" },
        { "/contacts/staggerSeconds", "0.051" },
        { "/contacts/staggerSeconds", "-0.001" },
        { "/contacts/staggerSeconds", R"("2 sec")" },
        { "/mixingBuses/0/name", "" },
        { "/mixingBuses/0/name", R"("")" },
        { "/mixingBuses/0/kind", "" },
        { "/mixingBuses/0/kind", R"("virtual earth")" },
        { "/mixingBuses/0/feedbackOhms", "0" },
        { "/mixingBuses/0/feedbackOhms", R"("-47k")" },
        { "/mixingBuses/0/gainBandwidthHz", "0.5" },
        { "/mixingBuses/0/gainBandwidthHz", "null" },
        { "/mixingBuses/0/rails", "6" },
        { "/mixingBuses/0/rails", "[-6]" },
        { "/mixingBuses/0/rails", "[6, -6]" },
        { "/mixingBuses/0/rails", "[0, 12]" },
        { "/mixingBuses/0/rails", "[-12, 0]" },
        { "/mixingBuses/0/rails", R"(["-0", "6"])" },
        { "/mixingBuses/0/rails", R"(["6", "12"])" },
        { "/mixingBuses/0/rails", "[-20000, 6]" },
        { "/mixingBuses/1/loadOhms", "1e13" },
        { "/mixingBuses/1/loadFarads", "0.1" },
        { "/mixingBuses/1/loadFarads", R"("1 H")" },
        { "/preamps/0/name", "" },
        { "/preamps/0/bus", "" },
        { "/preamps/0/bus", "[]" },
        { "/preamps/0/outlet", "" },
        { "/preamps/0/outlet", "1" },
        { "/preamps/0/stages", "{}" },
        { "/preamps/0/stages/0", R"("amplifier")" },
        { "/preamps/0/stages/0/name", "" },
        { "/preamps/0/stages/0/kind", "" },
        { "/preamps/0/stages/0/kind", R"("valve")" },
        { "/preamps/0/stages/0/coupling", "1e-6" },
        { "/preamps/0/stages/0/coupling/farads", "0" },
        { "/preamps/0/stages/0/coupling/farads", R"("1M")" },
        { "/preamps/0/stages/0/coupling/inputOhms", R"("")" },
        { "/preamps/0/stages/0/gain", R"("4")" },
        { "/preamps/0/stages/0/gain", "2e6" },
        { "/preamps/0/stages/0/gainBandwidthHz", R"("3 MF")" },
        { "/preamps/0/stages/1/emitterAmps", "0" },
        { "/preamps/0/stages/1/emitterAmps", "101" },
        { "/preamps/0/stages/1/emitterAmps", R"("0.7 mV")" },
        { "/preamps/0/stages/1/emitterOhms", "false" },
        { "/preamps/0/stages/1/loadOhms", R"("4,7k")" },
        { "/preamps/0/stages/1/rails", R"([-6, "V"])" },
        { "/preamps/1/stages/0/card", "" },
        { "/preamps/1/stages/0/card", R"("")" },
        { "/preamps/1/stages/0/card", R"("/etc/Tone.json")" },
        { "/outlets/0/name", "" },
        { "/outlets/0/kind", R"("headphones")" },
        { "/outlets/0/swell", "1" },
        { "/outlets/0/swellFloorDb", "3" },
        { "/outlets/0/swellFloorDb", "-121" },
        { "/outlets/1/on", R"("yes")" },
        { "/outlets/1/tremulant", "6" },
        { "/outlets/1/tremulant/rateHz", "0" },
        { "/outlets/1/tremulant/rateHz", "21" },
        { "/outlets/1/tremulant/depth", "0.96" },
        { "/outlets/1/tremulant/depth", R"("0.3")" },
        { "/outlets/2/rotary", "[]" },
        { "/outlets/2/rotary/crossoverHz", "19" },
        { "/outlets/2/rotary/horn", "400" },
        { "/outlets/2/rotary/horn/slowRpm", "-1" },
        { "/outlets/2/rotary/horn/fastRpm", "3001" },
        { "/outlets/2/rotary/drum/radiusMetres", "1.1" },
        { "/outlets/2/rotary/drum/riseSeconds", "0" },
        { "/outlets/2/rotary/drum/fallSeconds", R"("1 min")" },
        { "/couplers/0/tablet", "" },
        { "/couplers/0/from", "" },
        { "/couplers/0/to", "" },
        { "/couplers/0/octaves", "2" },
        { "/couplers/0/octaves", "0.5" },
        { "/couplers/0/drawn", "0" },
        { "/stops/0/bus", R"("")" },
        { "/stops/0/bus", "null" },
        { "/stops/0/mixingOhms", "0" },
        { "/stops/0/mixingOhms", R"("56kk")" },
        { "/stops/0/polarity", "0" },
        { "/stops/0/polarity", R"("-")" },
        { "/stops/0/whenRetired", R"("closed")" },
        { "/stops/0/whenRetired", "false" },
        { "/stops/0/drawn", R"("true")" },
        { "/stops/0/asFound", R"("open")" },
        { "/stops/0/asFound/division", R"("")" },
        { "/stops/0/asFound/card", R"("/etc/Flute.json")" },
        { "/stops/0/asFound/card", "null" },
        { "/stops/0/asFound/bus", "7" },
        { "/stops/0/asFound/bus", R"("a\tb")" },
        { "/stops/0/asFound/mixingOhms", "0" },
        { "/stops/0/asFound/mixingOhms", R"("47k F")" },
        { "/stops/0/asFound/polarity", "0" },
        { "/stops/0/asFound/whenRetired", R"("closed")" },
        { "/stops/0/asFound/date", R"("2026-11-32")" },
        { "/stops/0/asFound/date", R"("2026-00-10")" },
        { "/stops/0/asFound/date", R"("26-11-27")" },
        { "/stops/0/asFound/date", "20261127" },
        { "/stops/0/asFound/why", "1" },
    };
    return changes;
}

/// What a schema cannot know: names that stand for something, and numbers that go with other numbers.
const std::vector<Change>& badForTheLoader()
{
    static const std::vector<Change> changes {
        { "/divisions/1/midiChannel", "1" },
        { "/contacts/order/0", R"("S4")" },
        { "/mixingBuses/1/name", R"("Flutes")" },
        { "/preamps/0/bus", R"("Fluets")" },
        { "/preamps/1/bus", R"("Flutes")" },
        { "/preamps/0/outlet", R"("Attic")" },
        { "/preamps/1/name", R"("Flute preamp")" },
        { "/preamps/0/stages/1/name", R"("Gain")" },
        { "/outlets/1/name", R"("Main")" },
        { "/outlets/2/rotary/horn/slowRpm", "401" },
        { "/couplers/0/from", R"("Great")" },
        { "/couplers/0/to", R"("Lower")" },
        { "/couplers/1/octaves", "0" },
        { "/couplers/1/tablet", R"("Upper to Lower")" },
        { "/stops/0/bus", R"("Flute")" },
        { "/stops/1/tablet", R"("Flute 8")" },
        { "/stops/1/tablet", R"("Upper octave")" },
    };
    return changes;
}

} // namespace

TEST (InstrumentSchema, AndTheLoaderAcceptTheWholeOrgan)
{
    EXPECT_EQ (refusedAt (whole()), "accepted");
    EXPECT_TRUE (SchemaChecker ("instrument").accepts (whole()));
}

TEST (InstrumentSchema, AndTheLoaderRefuseTheSame)
{
    for (const auto& change : badForBoth())
        expectRefusal (change, true);
}

TEST (InstrumentSchema, CannotTellWhatOnlyTheLoaderCan)
{
    for (const auto& change : badForTheLoader())
        expectRefusal (change, false);
}

TEST (InstrumentSchema, AndTheLoaderHaveTheSameUpperLimits)
{
    const SchemaChecker schema ("instrument");
    for (const auto& [place, limit] : std::vector<std::pair<std::string, std::size_t>> { { "/keyedBuses", 64 },
                                                                                         { "/mixingBuses", 32 },
                                                                                         { "/outlets", 16 },
                                                                                         { "/couplers", 64 },
                                                                                         { "/preamps/0/stages", 16 },
                                                                                         { "/stops", 512 } })
    {
        auto document = whole();
        auto& list = document.at (Json::json_pointer (place));
        while (list.size() < limit)
        {
            list.push_back (list.front());
            list.back()[list.front().contains ("tablet") ? "tablet" : "name"] = "N" + std::to_string (list.size());
        }
        EXPECT_EQ (refusedAt (document), "accepted") << place;
        EXPECT_TRUE (schema.accepts (document)) << place;
        list.push_back (list.front());
        EXPECT_EQ (refusedAt (document), place);
        EXPECT_FALSE (schema.accepts (document)) << place;
    }
}

} // namespace stopwright
