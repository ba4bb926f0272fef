// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ValueLimits.h"
#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/MaskDocument.h"
#include "Organ/SampleDocuments.h"
#include "Organ/SchemaChecker.h"
#include "Organ/UnknownFields.h"

#include <gtest/gtest.h>
#include <set>

namespace stopwright
{

namespace
{

bool loaderAccepts (const std::string& kind, const std::string& text)
{
    try
    {
        if (kind == "card")
            parseCard (text, "sample");
        else if (kind == "mask")
            parseMask (text, "sample");
        else
            parseInstrument (text, "sample");
        return true;
    }
    catch (const DocumentError&)
    {
        return false;
    }
}

class Schemas : public testing::TestWithParam<std::string>
{};

/// A card with one resistor, whose value is given as JSON.
std::string cardWithPart (const std::string& kind, const std::string& value)
{
    return R"({"stopwright":1,"kind":"card","taps":[{"name":"W","wave":"square","node":"a"}],"parts":[{"name":"X","kind":")"
           + kind + R"(","nodes":["a","0"],"value":)" + value + R"(}],"output":"a"})";
}

} // namespace

TEST_P (Schemas, AgreeWithTheLoaderOnGoodDocuments)
{
    SchemaChecker schema (GetParam());
    const auto files = sampleDocuments ("good", GetParam());
    ASSERT_GE (files.size(), 6U);
    for (const auto& file : files)
    {
        EXPECT_TRUE (loaderAccepts (GetParam(), textOf (file))) << file;
        EXPECT_TRUE (schema.accepts (Json::parse (textOf (file)))) << file;
    }
}

TEST_P (Schemas, AgreeWithTheLoaderOnBadDocuments)
{
    SchemaChecker schema (GetParam());
    const auto files = sampleDocuments ("bad", GetParam());
    ASSERT_GE (files.size(), 15U);
    for (const auto& file : files)
    {
        EXPECT_FALSE (loaderAccepts (GetParam(), textOf (file))) << file;
        EXPECT_FALSE (schema.accepts (Json::parse (textOf (file)))) << file;
    }
}

TEST_P (Schemas, AcceptWhatIsWritten)
{
    SchemaChecker schema (GetParam());
    for (const auto& file : sampleDocuments ("good", GetParam()))
    {
        const auto text = GetParam() == "card"   ? cardText (readCard (file))
                          : GetParam() == "mask" ? maskText (readMask (file))
                                                 : instrumentText (readInstrument (file));
        EXPECT_TRUE (schema.accepts (Json::parse (text))) << text;
    }
}

INSTANTIATE_TEST_SUITE_P (Kinds,
                          Schemas,
                          testing::Values ("card", "instrument", "mask"),
                          [] (const auto& kind) { return kind.param; });

/// The notation of values, case by case: the pattern in the schema and the reader in Units are written apart.
TEST (Schema, AgreesWithTheLoaderOnNotation)
{
    SchemaChecker schema ("card");
    const std::vector<std::string> texts {
        "47k",  "4k7",     "R47",      "4R7",  "150",       "0.1",        ".5",           "5.",
        "1e3",  "1E+3",    "1e-3",     "47 k", "k7",        "4k7R",       "47kR",         "47R",
        "47 R", "47ohm",   "4.7 k",    "4.k7", "4 k7",      "4k 7",       "1H5",          "680m",
        "1M",   "22n",     "0.1u",     "1F",   "4n7F",      "4n7 F",      "nF",           "",
        " ",    " 47k ",   "+47k",     "47kk", "1e3k",      "1e3 k",      "1e",           "1,5",
        "0x10", "1e3F",    "1H",       "F47",  "1\xC2\xB5", "1\xCE\xBCH", "47 k\xCE\xA9", "47\xE2\x84\xA6",
        "4,7k", "47 kohm", "47 Kohms", "0",    "0k",        "R0"
    };
    for (const std::string kind : { "resistor", "capacitor", "inductor" })
    {
        for (const auto& text : texts)
        {
            const auto document = cardWithPart (kind, "\"" + text + "\"");
            const bool inSchema = schema.accepts (Json::parse (document));
            const auto fault = refusalOf ([&document] { parseCard (document, "sample"); });
            const bool outOfRangeOnly = fault.find ("but must be from") != std::string::npos && inSchema;
            EXPECT_TRUE (outOfRangeOnly || inSchema == (fault == "no error"))
                << kind << " \"" << text << "\": " << fault;
        }
    }
}

TEST (Schema, HasTheLimitsOfTheCircuit)
{
    SchemaChecker schema ("card");
    const std::vector<std::pair<std::string, const ValueRange*>> kinds { { "resistor", &ValueLimits::resistance },
                                                                         { "capacitor", &ValueLimits::capacitance },
                                                                         { "inductor", &ValueLimits::inductance } };
    for (const auto& [kind, range] : kinds)
    {
        for (const double inside : { range->lowest, range->highest })
            EXPECT_TRUE (schema.accepts (Json::parse (cardWithPart (kind, Json (inside).dump())))) << kind << inside;
        for (const double outside : { 0.999 * range->lowest, 1.001 * range->highest })
            EXPECT_FALSE (schema.accepts (Json::parse (cardWithPart (kind, Json (outside).dump())))) << kind << outside;
    }
}

/// The tables behind "did you mean" name the very fields that the schemas do.
TEST (Schema, HasTheFieldsTheProgramKnows)
{
    const auto fieldsOf = [] (const Json& object)
    {
        std::set<std::string> fields;
        for (const auto& [name, value] : object.at ("properties").items())
            fields.insert (name);
        return fields;
    };
    const auto known = [] (const std::string& kind)
    {
        const auto fields = knownFields (kind);
        return std::set<std::string> (fields.begin(), fields.end());
    };

    const auto card = schemaOf ("card");
    const auto instrument = schemaOf ("instrument");
    EXPECT_EQ (fieldsOf (card), known ("card"));
    EXPECT_EQ (fieldsOf (card["definitions"]["tap"]), known ("tap"));
    EXPECT_EQ (fieldsOf (card["definitions"]["tapAsFound"]), known ("tapAsFound"));
    EXPECT_EQ (fieldsOf (card["definitions"]["part"]), known ("part"));
    const auto mask = schemaOf ("mask");
    EXPECT_EQ (fieldsOf (mask), known ("mask"));
    EXPECT_EQ (fieldsOf (mask["definitions"]["harmonic"]), known ("harmonic"));
    EXPECT_EQ (fieldsOf (mask["definitions"]["band"]), known ("band"));
    EXPECT_EQ (fieldsOf (instrument), known ("instrument"));
    EXPECT_EQ (fieldsOf (instrument["properties"]["tuning"]), known ("tuning"));
    for (const std::string kind : { "keyer", "division", "keyedBus", "contacts", "mixingBus", "preamp", "stage",
                                    "outlet", "coupler", "stop", "stopAsFound" })
        EXPECT_EQ (fieldsOf (instrument["definitions"][kind]), known (kind)) << kind;
    EXPECT_EQ (fieldsOf (instrument["definitions"]["stage"]["properties"]["coupling"]), known ("coupling"));
    const auto& tremulantOrRotary = instrument["definitions"]["outlet"]["allOf"];
    EXPECT_EQ (fieldsOf (tremulantOrRotary[0]["then"]["properties"]["tremulant"]), known ("tremulant"));
    EXPECT_EQ (fieldsOf (tremulantOrRotary[1]["then"]["properties"]["rotary"]), known ("rotary"));
    for (const std::string rotor : { "horn", "drum" })
        EXPECT_EQ (fieldsOf (instrument["definitions"]["rotor"]), known (rotor));
}

} // namespace stopwright
