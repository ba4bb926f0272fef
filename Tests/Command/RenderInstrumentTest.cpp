// SPDX-License-Identifier: GPL-3.0-or-later
//
// The render command with the document of an instrument.
#include "Command/MidiBuilder.h"
#include "Command/ProgramRun.h"
#include "Command/WavReading.h"
#include "Support/Spectrum.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stopwright
{

using namespace midi;

namespace
{

/// A square of 1 V peak to peak, its tap the output.
std::string card (const std::string& footage)
{
    return R"({ "stopwright": 1, "kind": "card", "name": "Square", "taps": [ { "name": "W", "wave": "square", "footage": ")"
           + footage + R"(", "vpp": 1, "node": "a" } ], "parts": [], "output": "a" })";
}

/// Two manuals and a coupler, a virtual earth that halves what comes through 94 k, and a stage of gain 4. Rails of 1.5 V:
/// one note of half a volt at the tap passes, two clip.
constexpr const char* organText = R"({ "stopwright": 1, "kind": "instrument", "name": "Two manuals",
  "tuning": { "kind": "equalTemperament" },
  "divisions": [ { "name": "Upper", "lowestKey": "C2", "highestKey": "C7", "midiChannel": 1 },
                 { "name": "Lower", "lowestKey": "C2", "highestKey": "C6", "midiChannel": 2 } ],
  "mixingBuses": [ { "name": "Reeds", "kind": "virtualEarth", "feedbackOhms": "47k" } ],
  "preamps": [ { "name": "Reeds preamp", "bus": "Reeds", "outlet": "Main",
                 "stages": [ { "name": "Output", "kind": "amplifier", "gain": 4, "rails": [-1.5, 1.5] } ] } ],
  "outlets": [ { "name": "Main", "kind": "main", "swellFloorDb": -20 } ],
  "couplers": [ { "tablet": "Lower to Upper", "from": "Upper", "to": "Lower" } ],
  "stops": [ { "tablet": "Reed 8", "division": "Upper", "card": "8.json", "bus": "Reeds", "mixingOhms": "94k", "drawn": true },
             { "tablet": "Reed 4", "division": "Lower", "card": "4.json", "bus": "Reeds", "mixingOhms": "94k" },
             { "tablet": "Wish", "division": "Upper", "bus": "Reeds" },
             { "tablet": "Loose", "division": "Upper", "card": "8.json" } ] })";

/// Gain of bus and stage.
constexpr double gain = 47.0 / 94.0 * 4.0;

/// Of a square of 1 V peak to peak (closed form).
constexpr double fundamental = 2.0 / std::numbers::pi;

class RenderInstrument : public testing::Test
{
protected:
    RenderInstrument() : organ (scratch.write ("organ.json", organText))
    {
        scratch.write ("8.json", card ("8"));
        scratch.write ("4.json", card ("4"));
    }

    /// Holds A3 on the instrument for a second, with more arguments.
    ProgramResult hold (const std::vector<std::string>& more = {}) const
    {
        return render (organ, { "--keys", "A3", "--seconds", "1" }, more);
    }

    ProgramResult play (const std::string& events, const std::vector<std::string>& more = {}) const
    {
        return render (organ, { "--midi", scratch.write ("a.mid", header (0, 1, 96) + track (events)) }, more);
    }

    ProgramResult render (const std::string& document,
                          const std::vector<std::string>& what,
                          const std::vector<std::string>& more) const
    {
        std::vector<std::string> arguments { "render", document, "--out", out.string() };
        arguments.insert (arguments.end(), what.begin(), what.end());
        arguments.insert (arguments.end(), more.begin(), more.end());
        return runProgram (arguments);
    }

    /// Peak volts of a partial in half a second of the file, re what one note's fundamental is at the outlet.
    double levelOf (double hertz, double fromSeconds = 0.25) const
    {
        const auto wav = readWav (out);
        const auto samples = std::span (wav.samples)
                                 .subspan (static_cast<std::size_t> (fromSeconds * wav.rateHz),
                                           static_cast<std::size_t> (wav.rateHz / 2));
        return std::abs (windowedPartial (samples, hertz, wav.rateHz)) / (fundamental * gain);
    }

    void expectRefusal (const ProgramResult& result, const std::vector<std::string>& words) const
    {
        EXPECT_EQ (result.status, 1);
        EXPECT_EQ (result.out, "");
        EXPECT_EQ (result.errorLines(), 1) << result.err;
        for (const auto& word : words)
            EXPECT_NE (result.err.find (word), std::string::npos) << "no " << word << " in: " << result.err;
        EXPECT_FALSE (std::filesystem::exists (out));
    }

    ScratchFolder scratch;
    std::string organ;
    std::filesystem::path out = scratch / "out.wav";
};

constexpr double a3Hz = 220.0;
constexpr double hundredthOfADecibel = 1.15e-3;

} // namespace

TEST_F (RenderInstrument, PlaysTheStopsThatAreDrawn)
{
    const auto result = hold();
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    EXPECT_NE (result.out.find ("out.wav: Two manuals, Reed 8 drawn, 1.000 s at 48000 Hz, peak "), std::string::npos)
        << result.out;
    EXPECT_EQ (result.out.find ("clipped"), std::string::npos) << result.out;
    EXPECT_NEAR (levelOf (a3Hz), 1.0, hundredthOfADecibel);
    EXPECT_LT (levelOf (2.0 * a3Hz), 1e-4);
}

TEST_F (RenderInstrument, DrawsTheNamedTabletsInstead)
{
    const auto four = hold ({ "--stops", " Reed 4 " });
    ASSERT_EQ (four.status, 0) << four.err;
    EXPECT_NE (four.out.find ("Two manuals, Reed 4 drawn"), std::string::npos) << four.out;
    EXPECT_NEAR (levelOf (2.0 * a3Hz), 1.0, hundredthOfADecibel) << "held keys are of its division";
    EXPECT_LT (levelOf (a3Hz), 1e-4);

    const auto all = hold ({ "--stops", "all" });
    EXPECT_NE (all.out.find ("Reed 8 and Reed 4 drawn"), std::string::npos) << all.out;
    const auto coupled = hold ({ "--stops", "Reed 4, Lower to Upper", "--division", "Upper" });
    ASSERT_EQ (coupled.status, 0) << coupled.err;
    EXPECT_EQ (coupled.err, "");
    EXPECT_NE (coupled.out.find ("Reed 4 and Lower to Upper drawn"), std::string::npos) << coupled.out;
    EXPECT_NEAR (levelOf (2.0 * a3Hz), 1.0, hundredthOfADecibel);
}

TEST_F (RenderInstrument, SaysWhichStageClips)
{
    const auto result = render (organ, { "--keys", "A3 E4 A4", "--seconds", "0.2" }, {});
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find (", clipped: Reeds preamp: Output\n"), std::string::npos) << result.out;
}

TEST_F (RenderInstrument, ChannelsOfAMidiFilePlayTheirDivisions)
{
    // A3 on channel 2 for a second, then on channel 1.
    const auto events = bytes ({ 0, 0x91, 57, 1, 0x81, 0x40, 0x81, 57, 0, 0, 0x90, 57, 1, 0x81, 0x40, 0x80, 57, 0 });
    const auto result = play (events, { "--stops", "Reed 8,Reed 4", "--tail", "0" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    EXPECT_NE (result.out.find ("2.000 s"), std::string::npos) << result.out;
    EXPECT_NEAR (levelOf (2.0 * a3Hz), 1.0, hundredthOfADecibel);
    EXPECT_LT (levelOf (a3Hz), 1e-4);
    EXPECT_NEAR (levelOf (a3Hz, 1.25), 1.0, hundredthOfADecibel);
    EXPECT_LT (levelOf (2.0 * a3Hz, 1.25), 1e-4);
}

TEST_F (RenderInstrument, SaysWhichNotesNoDivisionHears)
{
    const auto result =
        play (bytes ({ 0, 0x90, 57, 1, 0, 0x94, 60, 1, 0, 0x91, 95, 1, 96, 0x80, 57, 0, 0, 0x84, 60, 0 }));
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.errorLines(), 2) << result.err;
    EXPECT_NE (result.err.find ("1 of 3 notes are on channel 5, which no division hears, and are left out."),
               std::string::npos)
        << result.err;
    EXPECT_NE (result.err.find ("1 of 3 notes lie outside the keys of their divisions and are left out."),
               std::string::npos)
        << result.err;
    std::filesystem::remove (out);
    expectRefusal (play (bytes ({ 0, 0x94, 60, 1, 96, 0x84, 60, 0 })), { "nothing to play", "channel 5" });
}

TEST_F (RenderInstrument, ControllerElevenMovesTheSwellShoe)
{
    // Closed after a second.
    const auto events = bytes ({ 0, 0x90, 57, 1, 0x81, 0x40, 0xB0, 11, 0, 0x81, 0x40, 0x80, 57, 0 });
    ASSERT_EQ (play (events).status, 0);
    EXPECT_NEAR (levelOf (a3Hz), 1.0, hundredthOfADecibel);
    EXPECT_NEAR (levelOf (a3Hz, 1.25), 0.1, 0.1 * hundredthOfADecibel);

    ASSERT_EQ (play (events, { "--swell", "0.5" }).status, 0);
    EXPECT_NEAR (levelOf (a3Hz), std::sqrt (0.1), hundredthOfADecibel);
    EXPECT_NEAR (levelOf (a3Hz, 1.25), 0.1, 0.1 * hundredthOfADecibel);
}

TEST_F (RenderInstrument, ListensAtTheLevelOfTheFirstDrawnStop)
{
    // C4 alone is 30 dB below full scale, whatever its volts are; two octaves hold nothing else to measure.
    const auto result = render (organ, { "--keys", "C4", "--seconds", "1" }, { "--scale", "listening" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_NE (result.out.find ("of full scale"), std::string::npos) << result.out;
    const auto wav = readWav (out);
    double sum = 0.0;
    for (std::size_t frame = 12000; frame < 48000; ++frame)
        sum += wav.samples[frame] * wav.samples[frame];
    EXPECT_NEAR (10.0 * std::log10 (sum / 36000.0), -30.0, 0.1);
}

TEST_F (RenderInstrument, RefusesTabletsInASentence)
{
    expectRefusal (hold ({ "--stops", "Reed 8, Reed" }), { "organ.json", "\"Reed\"", "It has" });
    expectRefusal (hold ({ "--stops", "reed 5" }), { "did you mean \"Reed 8\"", "Wish", "Lower to Upper" });
    expectRefusal (hold ({ "--stops", "Wish" }), { "Wish is blank" });
    expectRefusal (hold ({ "--stops", "Loose" }), { "Loose is on no mixing bus" });
    expectRefusal (hold ({ "--stops", "Lower to Upper" }), { "No stop is drawn", "--stops" });
    expectRefusal (hold ({ "--division", "Uper" }), { "division \"Uper\"", "did you mean \"Upper\"", "Lower" });
    expectRefusal (render (organ, { "--keys", "D6", "--seconds", "1" }, { "--division", "Lower" }),
                   { "D6", "C2 to C6" });
    EXPECT_EQ (hold ({ "--stops", " , " }).status, 2);
    EXPECT_EQ (hold ({ "--swell", "1.5" }).status, 2);
}

TEST_F (RenderInstrument, RefusesWhatDoesNotGoTogether)
{
    expectRefusal (hold ({ "--instrument", organ }), { "this is an instrument", "leave out --instrument" });
    expectRefusal (play (bytes ({ 0, 0x90, 60, 1, 96, 0x80, 60, 0 }), { "--division", "Lower" }), { "--division" });

    const auto square = (scratch / "8.json").string();
    const std::vector<std::string> held { "--keys", "A3", "--seconds", "1" };
    expectRefusal (render (square, held, { "--stops", "Reed 8" }), { "this is a card", "--stops" });
    expectRefusal (render (square, held, { "--swell", "1" }), { "this is a card", "--swell" });
    expectRefusal (render (square, held, { "--division", "Upper" }), { "--instrument" });

    const auto over = runProgram ({ "render", organ, "--keys", "A3", "--seconds", "1", "--out", square });
    EXPECT_EQ (over.status, 1);
    EXPECT_NE (over.err.find ("name another file"), std::string::npos) << over.err;
    EXPECT_GT (std::filesystem::file_size (square), 0U);

    auto broken = card ("8");
    broken.replace (broken.find ("\"output\": \"a\""), 13, "\"output\": \"b\"");
    scratch.write ("8.json", broken);
    expectRefusal (hold(), { "8.json", "\"b\"" });
    std::filesystem::remove (square);
    expectRefusal (hold(), { "8.json" });
}

TEST_F (RenderInstrument, ASilentRenderingIsSaid)
{
    const auto elsewhere = hold ({ "--division", "Lower" });
    EXPECT_EQ (elsewhere.status, 0);
    EXPECT_EQ (elsewhere.errorLines(), 1) << elsewhere.err;
    EXPECT_NE (elsewhere.err.find ("silent"), std::string::npos) << elsewhere.err;

    // C8 at 1 ft would be 33.5 kHz, and there is no generator above 20 kHz.
    const auto tooHigh = scratch.write ("1.json", card ("1"));
    const auto nothing = render (tooHigh, { "--keys", "C8", "--seconds", "0.1" }, {});
    EXPECT_EQ (nothing.status, 0);
    EXPECT_EQ (nothing.errorLines(), 1) << nothing.err;
    EXPECT_NE (nothing.err.find ("no generator sounds"), std::string::npos) << nothing.err;
    EXPECT_EQ (render (tooHigh, { "--keys", "C4 C8", "--seconds", "0.1" }, {}).err, "");

    // An output at common is no matter of generators.
    auto text = card ("8");
    text.replace (text.find ("\"parts\": []"), 11,
                  R"("parts": [ { "name": "R1", "kind": "resistor", "nodes": ["a", "0"], "value": "1k" },
                     { "name": "R2", "kind": "resistor", "nodes": ["b", "0"], "value": "1k" } ])");
    text.replace (text.find ("\"output\": \"a\""), 13, "\"output\": \"b\"");
    const auto grounded = render (scratch.write ("b.json", text), { "--keys", "C4", "--seconds", "0.1" }, {});
    EXPECT_EQ (grounded.errorLines(), 1) << grounded.err;
    EXPECT_EQ (grounded.err.find ("no generator sounds"), std::string::npos) << grounded.err;
}

TEST_F (RenderInstrument, PlaysTheDemonstrationOrgan)
{
    const auto result = render (preset ("LarkfieldOrgan.json"), { "--keys", "C4 E4", "--seconds", "1" },
                                { "--stops", "Krummhorn 8, Stopped flute 8", "--division", "Upper manual" });
    ASSERT_EQ (result.status, 0) << result.err;
    EXPECT_EQ (result.err, "");
    for (const std::string word : { "Krummhorn 8", "Stopped flute 8" })
        EXPECT_NE (result.out.find (word), std::string::npos) << result.out;
    const auto wav = readWav (out);
    EXPECT_EQ (wav.samples.size(), 48000U);
    EXPECT_GT (*std::max_element (wav.samples.begin(), wav.samples.end()), 0.01);
}

} // namespace stopwright
