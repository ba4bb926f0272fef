// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/CardDocument.h"

#include "Circuit/NetlistCheck.h"
#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

std::string sample (const std::string& name)
{
    return textOf (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/" + name + ".json");
}

/// The reed card with the first `from` replaced by `to`.
std::string changed (const std::string& from, const std::string& to)
{
    auto text = sample ("card-reed");
    const auto at = text.find (from);
    EXPECT_NE (at, std::string::npos) << from;
    return text.replace (at, from.size(), to);
}

std::string refusal (const std::string& from, const std::string& to)
{
    return refusalOf ([&] { parseCard (changed (from, to), "reed.json"); });
}

template <typename Kind>
const Kind& valueOf (const Card& card, std::size_t part)
{
    return std::get<Kind> (card.parts.at (part).value);
}

} // namespace

TEST (CardDocument, ReadsTapsAndParts)
{
    const auto card = parseCard (sample ("card-reed"), "reed.json");
    EXPECT_EQ (card.name, "Reed 8");
    EXPECT_EQ (card.output, "t");
    ASSERT_EQ (card.taps.size(), 1U);
    EXPECT_EQ (card.taps[0].wave.kind, WaveKind::staircase);
    EXPECT_EQ (card.taps[0].wave.ranks, 4);
    EXPECT_EQ (card.taps[0].voltsPeakToPeak, 2.0);
    EXPECT_EQ (card.taps[0].polarity, 1);
    ASSERT_EQ (card.parts.size(), 4U);
    EXPECT_EQ (card.parts[0].nodes, (std::vector<std::string> { "in", "t" }));
    EXPECT_EQ (card.parts[0].tolerance, 0.05);
    EXPECT_EQ (valueOf<Resistor> (card, 0).ohms, 47e3);
    EXPECT_EQ (valueOf<Inductor> (card, 1).henries, 1.0);
    EXPECT_EQ (valueOf<Inductor> (card, 1).windingOhms, 150.0);
    EXPECT_EQ (valueOf<Capacitor> (card, 2).farads, 22e-9);
    EXPECT_TRUE (std::isinf (valueOf<Capacitor> (card, 2).leakOhms));
}

TEST (CardDocument, ReadsEveryPart)
{
    const auto card = parseCard (sample ("card-parts"), "parts.json");
    EXPECT_EQ (card.taps[0].sourceOhms, 10e3);
    EXPECT_EQ (valueOf<Capacitor> (card, 1).leakOhms, 10e6);
    EXPECT_EQ (valueOf<Inductor> (card, 2).windingOhms, 0.47);
    EXPECT_EQ (valueOf<Inductor> (card, 2).selfFarads, 100e-12);
    EXPECT_EQ (valueOf<Potentiometer> (card, 3).ohms, 2.2e6);
    EXPECT_EQ (valueOf<Potentiometer> (card, 3).position, 0.25);
    EXPECT_EQ (valueOf<Potentiometer> (card, 3).taper, Taper::log);
    EXPECT_TRUE (valueOf<Switch> (card, 4).closed);
    EXPECT_EQ (valueOf<OpAmp> (card, 6).gainBandwidthHz, 1e6);
    EXPECT_EQ (valueOf<OpAmp> (card, 6).openLoopDb, 100.0);
    EXPECT_EQ ((*valueOf<OpAmp> (card, 6).rails)[1], 12.0);
    EXPECT_FALSE (valueOf<OpAmp> (card, 8).gainBandwidthHz);
}

TEST (CardDocument, ReadsEveryWave)
{
    const auto card = parseCard (sample ("card-waves"), "waves.json");
    EXPECT_EQ (card.taps[0].footage, Footage::parse ("16"));
    EXPECT_EQ (card.taps[0].voltsPeakToPeak, 0.2);
    EXPECT_EQ (card.taps[1].wave.duty, 0.125);
    EXPECT_EQ (card.taps[2].wave.ranks, 3);
    EXPECT_EQ (card.taps[2].wave.rankWeight (2), -1.0);
    EXPECT_EQ (card.taps[2].polarity, -1);
    EXPECT_EQ (card.taps[2].footage, Footage::parse ("2 2/3"));
    EXPECT_EQ (card.taps[3].wave.fallTau, 0.3);
    EXPECT_EQ (card.taps[3].wave.tauUnit, TauUnit::periods);
    EXPECT_EQ (card.taps[4].wave.riseTau, 300e-6);
    EXPECT_EQ (card.taps[4].wave.fallTau, 300e-6); // as the rise, when absent
    EXPECT_EQ (card.taps[4].wave.tauUnit, TauUnit::seconds);
    EXPECT_EQ (card.taps[7].wave.outphaseWeight, 0.475);
    EXPECT_EQ (card.taps[7].footage, Footage::parse ("3/2"));
}

TEST (CardDocument, GoodDocumentsHaveSoundNetworks)
{
    for (const auto& file : sampleDocuments ("good", "card"))
        EXPECT_NO_THROW (requireSound (netlistOf (readCard (file)))) << file;
}

TEST (CardDocument, TextIsStableAfterOneReading)
{
    for (const auto& file : sampleDocuments ("good", "card"))
    {
        const auto text = cardText (readCard (file));
        EXPECT_EQ (cardText (parseCard (text, "again")), text) << file;
    }
}

TEST (CardDocument, WritesAsATechnicianWould)
{
    const auto text = cardText (parseCard (sample ("card-reed"), "reed.json"));
    EXPECT_NE (
        text.find (R"({ "name": "R1", "kind": "resistor", "nodes": ["in", "t"], "value": "47k", "tolerance": 0.05 })"),
        std::string::npos)
        << text;
    EXPECT_NE (text.find ("\"vpp\": 2, \"sourceOhms\": 0,"), std::string::npos) << text;
}

TEST (CardDocument, KeepsValuesToTheLastBit)
{
    auto card = parseCard (sample ("card-reed"), "reed.json");
    const double odd = 46999.99999999999;
    std::get<Resistor> (card.parts[0].value).ohms = odd;
    card.taps[0].voltsPeakToPeak = 0.1 + 0.2;
    const auto again = parseCard (cardText (card), "again");
    EXPECT_EQ (valueOf<Resistor> (again, 0).ohms, odd);
    EXPECT_EQ (again.taps[0].voltsPeakToPeak, 0.1 + 0.2);
}

TEST (CardDocument, KeepsUnknownFields)
{
    const auto card = parseCard (sample ("card-unknown-fields"), "u.json");
    EXPECT_EQ (card.unknownFields.at ("card"), R"({"drawnBy":{"initials":"A. B.","sheets":[1,2]}})");
    const auto text = cardText (card);
    EXPECT_NE (text.find ("\"colour\": \"red\""), std::string::npos);
    EXPECT_NE (text.find ("\"make\": null"), std::string::npos);
    EXPECT_EQ (parseCard (text, "again").unknownFields, card.unknownFields);
}

TEST (CardDocument, UnknownFieldsGiveWayToKnownOnes)
{
    auto card = parseCard (sample ("card-unknown-fields"), "u.json"); // has a duty, which a staircase does not use
    card.taps[0].wave.kind = WaveKind::pulse;
    card.taps[0].wave.duty = 0.25;
    EXPECT_EQ (parseCard (cardText (card), "again").taps[0].wave.duty, 0.25);
}

TEST (CardDocument, KeepsUnknownFieldsOfPartsWithTheSameName)
{
    auto text = changed ("\"R2\",", "\"R1\", \"box\": 2,");
    text.replace (text.find ("\"R1\","), 5, "\"R1\", \"box\": 1,");
    const auto card = parseCard (text, "twins.json");
    EXPECT_EQ (card.unknownFields.at ("part:R1"), "{\"box\":1}");
    EXPECT_EQ (card.unknownFields.at ("part:R1#2"), "{\"box\":2}");
    EXPECT_EQ (parseCard (cardText (card), "again").unknownFields, card.unknownFields);
}

TEST (CardDocument, RefusalsNameThePlaceAndTheRemedy)
{
    EXPECT_EQ (refusal ("\"47k\"", "\"forty\"").substr (0, 42), "reed.json: /parts/0/value: part R1: the re");
    EXPECT_EQ (
        refusal ("\"kind\": \"resistor\"", "\"kind\": \"resister\""),
        "reed.json: /parts/0/kind: part R1: 'kind' must be resistor, capacitor, inductor, potentiometer, switch, opamp, "
        "diode, npn, pnp or supply, not \"resister\"; did you mean 'resistor'?");
    EXPECT_EQ (refusal ("\"wave\": \"staircase\"", "\"wave\": 4").substr (0, 43),
               "reed.json: /taps/0/wave: tap W1: 'wave' mus");
    EXPECT_EQ (
        refusal ("\"47k\"", "-47000"),
        "reed.json: /parts/0/value: part R1: the resistance is -47.0 k\xCE\xA9 but must be from 1.00 m\xCE\xA9 to 1.00 T\xCE\xA9.");
    EXPECT_EQ (refusal ("\"output\": \"t\"", "\"outptu\": \"t\""), "reed.json: the field 'output' is missing; add it.");
    EXPECT_EQ (refusal ("\"stopwright\": 1", "\"stopwright\": 7").substr (0, 57),
               "reed.json: /stopwright: the document is of version 7, and");
}

TEST (CardDocument, ReadsDiodesTransistorsAndSupplies)
{
    const auto card = readCard (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/card-devices.json");
    const auto part = [&card] (const std::string& name) {
        return std::find_if (card.parts.begin(), card.parts.end(), [&] (const Part& p) { return p.name == name; })
            ->value;
    };
    EXPECT_EQ (std::get<Supply> (part ("V1")).volts, 15.0);
    EXPECT_EQ (std::get<Supply> (part ("V2")).volts, 7.5);
    EXPECT_EQ (std::get<Supply> (part ("V2")).seriesOhms, 4.7);
    EXPECT_EQ (std::get<Npn> (part ("Q1")).saturationAmps, 0.01e-12);
    EXPECT_EQ (std::get<Npn> (part ("Q1")).forwardBeta, 200.0);
    EXPECT_EQ (std::get<Npn> (part ("Q1")).reverseBeta, 4.0);
    EXPECT_EQ (std::get<Npn> (part ("Q1")).earlyVolts, 74.03);
    EXPECT_EQ (std::get<Npn> (part ("Q1")).leakageAmps, 0.0);
    EXPECT_EQ (std::get<Pnp> (part ("Q2")).leakageAmps, 4e-6);
    EXPECT_EQ (std::get<Pnp> (part ("Q2")).reverseBeta, 1.0);
    EXPECT_FALSE (std::get<Pnp> (part ("Q2")).earlyVolts);
    EXPECT_EQ (std::get<Diode> (part ("D1")).saturationAmps, 2.52e-9);
    EXPECT_EQ (std::get<Diode> (part ("D1")).emissionCoefficient, 1.752);
    EXPECT_EQ (std::get<Diode> (part ("D1")).seriesOhms, 0.568);
    EXPECT_EQ (std::get<Diode> (part ("D2")).emissionCoefficient, 1.0);

    const auto text = cardText (card);
    EXPECT_EQ (cardText (parseCard (text, "again")), text);
}

TEST (CardDocument, DeviceRefusalsNameTheNumber)
{
    const auto diode = [] (const std::string& numbers)
    {
        return refusal ("\"kind\": \"resistor\", \"nodes\": [\"in\", \"t\"]",
                        "\"kind\": \"diode\", \"nodes\": [\"in\", \"t\"]" + numbers);
    };
    EXPECT_EQ (diode (""), "reed.json: /parts/0: part R1: the field 'saturationAmps' is missing; add it.");
    EXPECT_EQ (
        diode (", \"saturationAmps\": 1"),
        "reed.json: /parts/0/saturationAmps: part R1: the saturation current is 1.00 A but must be from 1.00e-20 A "
        "to 10.0 mA.");
}

TEST (CardDocument, RefusesWhatASchemaCannotTell)
{
    EXPECT_NE (refusal ("\"ranks\": 4", "\"ranks\": 4, \"weights\": [1, 1]"), "no error");
    EXPECT_NE (refusal ("\"47k\"", "\"1e30\""), "no error");
    EXPECT_NE (refusal ("\"footage\": \"8\"", "\"footage\": \"128\""), "no error");
    EXPECT_NE (refusal ("\"kind\": \"resistor\", \"nodes\": [\"in\", \"t\"]",
                        "\"kind\": \"opamp\", \"nodes\": [\"in\", \"t\", \"t\"], \"rails\": [5, -5]")
                   .find ("the lower rail comes first"),
               std::string::npos);
}

TEST (CardDocument, LongFaultsMakeShortSentences)
{
    EXPECT_LT (refusal ("\"47k\"", "\"" + std::string (1000000, '4') + "\"").size(), 300U);
    EXPECT_LT (refusal ("\"R1\"", "\"" + std::string (1000000, 'R') + "\"").size(), 300U);
    EXPECT_LT (refusal ("\"staircase\"", "\"" + std::string (1000000, 's') + "\"").size(), 300U);
}

TEST (CardDocument, WritesAndReadsFiles)
{
    const TemporaryFolder folder;
    const auto card = parseCard (sample ("card-parts"), "parts.json");
    writeCard (card, folder.file ("a.json"));
    EXPECT_EQ (cardText (readCard (folder.file ("a.json"))), cardText (card));
}

} // namespace stopwright
