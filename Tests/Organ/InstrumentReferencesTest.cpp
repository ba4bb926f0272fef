// SPDX-License-Identifier: GPL-3.0-or-later
//
// What one part of an instrument says of another: a wrong reference is refused in a sentence with the way out.
#include "Organ/InstrumentDocument.h"
#include "Organ/JsonTree.h"
#include "Organ/SampleDocuments.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

/// The sentence for the whole organ with `text` in one place (RFC 6901).
std::string refusal (const std::string& place, const std::string& text)
{
    auto document = parseJson (textOf (STOPWRIGHT_ROOT "/Tests/Organ/Documents/good/instrument-whole.json"), "whole");
    document.at (JsonTree::json_pointer (place)) = JsonTree::parse (text);
    return refusalOf ([&document] { parseInstrument (document.dump(), "o"); });
}

} // namespace

TEST (InstrumentReferences, ToWhatIsNotThere)
{
    EXPECT_EQ (refusal ("/preamps/0/bus", R"("Fluets")"),
               "o: /preamps/0/bus: preamp \"Flute preamp\": there is no mixing bus \"Fluets\" among the mixing buses; "
               "did you mean \"Flutes\"?");
    EXPECT_EQ (refusal ("/preamps/0/outlet", R"("Attic")"),
               "o: /preamps/0/outlet: preamp \"Flute preamp\": there is no outlet \"Attic\" among the outlets; add it "
               "there, or name one that is.");
    EXPECT_EQ (refusal ("/outlets", "[]"),
               "o: /preamps/0/outlet: preamp \"Flute preamp\": there is no outlet \"Tremulant\" among the outlets, for "
               "there are none; add it there.");
    EXPECT_EQ (refusal ("/couplers/0/from", R"("Louer")"),
               "o: /couplers/0/from: coupler \"Upper to Lower\": there is no division \"Louer\" among the divisions; "
               "did you mean \"Lower\"?");
    EXPECT_EQ (refusal ("/contacts/order/1", R"("S61")"),
               "o: /contacts/order/1: contacts: there is no keyed bus \"S61\" among the keyed buses; did you mean "
               "\"S16\"?");
    EXPECT_EQ (
        refusal ("/stops/1/bus", R"("Redes")"),
        "o: /stops/1/bus: stop \"Reed 8\": there is no mixing bus \"Redes\" among the mixing buses; did you mean "
        "\"Reeds\"?");
}

TEST (InstrumentReferences, ToWhatIsTaken)
{
    EXPECT_EQ (
        refusal ("/preamps/1/bus", R"("Flutes")"),
        "o: /preamps/1/bus: preamp \"Reed preamp\": the mixing bus Flutes feeds preamp \"Flute preamp\" already; "
        "give each preamp a bus of its own.");
    EXPECT_EQ (
        refusal ("/divisions/2/midiChannel", "2"),
        "o: /divisions/2/midiChannel: division Pedal: channel 2 is taken by division Lower; give each division a "
        "channel of its own.");
    EXPECT_EQ (
        refusal ("/stops/0/tablet", R"("Upper octave")"),
        "o: /stops/0/tablet: stop \"Upper octave\": a coupler has this name; give each tablet a name of its own.");
    EXPECT_EQ (refusal ("/stops/1/tablet", R"("Flute 8")"),
               "o: /stops/1/tablet: stop \"Flute 8\": the name \"Flute 8\" stands twice; give each a name of its own.");
    EXPECT_EQ (refusal ("/preamps/0/stages/1/name", R"("Gain")"),
               "o: /preamps/0/stages/1/name: preamp \"Flute preamp\", stage Gain: the name \"Gain\" stands twice; give "
               "each a name of its own.");
    EXPECT_EQ (refusal ("/contacts/order/1", R"("S8")"),
               "o: /contacts/order/1: contacts: the name \"S8\" stands twice; leave one out.");
}

TEST (InstrumentReferences, ThatLeadNowhere)
{
    EXPECT_EQ (refusal ("/couplers/0/to", R"("Lower")"),
               "o: /couplers/0: coupler \"Upper to Lower\": it couples division Lower to itself at the same pitch, "
               "which does nothing; name another division, or give 1 or -1 octaves.");
    EXPECT_EQ (refusal ("/couplers/1/octaves", "-1"), "no error");
}

TEST (InstrumentReferences, OfOneNumberToAnother)
{
    EXPECT_EQ (
        refusal ("/outlets/2/rotary/drum/slowRpm", "343"),
        "o: /outlets/2/rotary/drum: outlet Rotary: the slow speed of the drum is 343 turns per minute, above its "
        "fast speed of 342; exchange them.");
    EXPECT_EQ (refusal ("/mixingBuses/0/rails", "[0, 12]"),
               "o: /mixingBuses/0/rails: mixing bus Flutes: the rails are how far the output swings to either side of "
               "its resting point; write [low, high] with low below 0 and high above it, such as [-6, 6].");
}

TEST (InstrumentReferences, MayBeLeftOut)
{
    EXPECT_EQ (refusal ("/preamps", "[]"), "no error") << "an instrument is surveyed bus by bus";
    EXPECT_EQ (refusal ("/couplers", "[]"), "no error");
    EXPECT_EQ (refusal ("/contacts", "{}"), "no error");
}

} // namespace stopwright
