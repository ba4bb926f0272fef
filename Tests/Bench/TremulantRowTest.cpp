// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TremulantRow.h"

#include "Bench/GlossaryTerms.h"
#include "Bench/OrganSession.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/TremulantEdit.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

class TremulantRowTest : public OrganSession
{
protected:
    static constexpr double pieceSeconds = 0.01;

    TremulantRow& row()
    {
        auto* const found = view_->rail().findTremulantRow ("Tremulant");
        if (found == nullptr)
            throw std::runtime_error ("no knobs of the tremulant");
        return *found;
    }

    const TremulantSettings& settings() const { return *findTremulant (*session_.document().instrument, "Tremulant"); }

    std::string document() const { return instrumentText (*session_.document().instrument); }

    /// The flute alone, which goes to the tremulant's outlet, with a held key and the tremulant on.
    void sway()
    {
        drawOnly ("Stopped flute 8");
        session_.switchOutlet (1, true);
        engine().key (60, true, upper);
        play (0.5);
    }

    /// Effective values of pieces, one after the other.
    std::vector<double> envelope (double seconds)
    {
        std::vector<double> pieces;
        for (double time = 0.0; time < seconds; time += pieceSeconds)
        {
            double sum = 0.0;
            const auto played = play (pieceSeconds);
            for (const double sample : played)
                sum += sample * sample;
            pieces.push_back (std::sqrt (sum / static_cast<double> (played.size())));
        }
        return pieces;
    }

    /// (1 + depth) / (1 - depth), as far as pieces resolve it.
    double swing()
    {
        const auto pieces = envelope (1.0);
        const auto [lowest, highest] = std::ranges::minmax (pieces);
        return highest / lowest;
    }

    /// Swings in so many seconds.
    int swings (double seconds)
    {
        const auto pieces = envelope (seconds);
        const auto [lowest, highest] = std::ranges::minmax (pieces);
        const double low = lowest + 0.3 * (highest - lowest);
        const double high = lowest + 0.7 * (highest - lowest);
        bool isUp = false;
        int count = 0;
        for (const double piece : pieces)
        {
            if (! isUp && piece > high)
                ++count;
            isUp = isUp ? piece > low : piece > high;
        }
        return count;
    }

    static juce::KeyPress key (int code) { return juce::KeyPress (code); }
};

} // namespace

TEST_F (TremulantRowTest, TurningTheDepthIsHeardAndStandsInTheDocument)
{
    openView();
    sway();
    EXPECT_NEAR (swing(), 1.3 / 0.7, 0.15);
    for (int step = 0; step < 6; ++step)
        row().depth().keyPressed (key (juce::KeyPress::upKey));
    EXPECT_DOUBLE_EQ (settings().depth, 0.6);
    EXPECT_TRUE (session_.document().isUnsaved());
    EXPECT_EQ (session_.history().undoName(), "Tremulant depth to 60 %");
    play (0.2);
    EXPECT_NEAR (swing(), 1.6 / 0.4, 0.6);
    row().depth().takeText ("0");
    play (0.2);
    EXPECT_LT (swing(), 1.05);
}

TEST_F (TremulantRowTest, TurningTheRateIsHeard)
{
    openView();
    sway();
    EXPECT_NEAR (swings (2.0), 12, 1);
    row().rate().takeText ("3.5");
    EXPECT_DOUBLE_EQ (settings().rateHz, 3.5);
    play (0.2);
    EXPECT_NEAR (swings (2.0), 7, 1);
    row().rate().keyPressed (key (juce::KeyPress::downKey));
    EXPECT_DOUBLE_EQ (settings().rateHz, 3.4);
    EXPECT_DOUBLE_EQ (settings().depth, 0.3);
}

TEST_F (TremulantRowTest, ItIsTurnedAndNotBuiltAnew)
{
    openView();
    sway();
    // What only the sound was told would be gone from one that is built anew.
    engine().draw ("Stopped flute 8", false);
    EXPECT_LT (settledRms(), 1e-5);
    row().depth().takeText ("80 %");
    row().rate().takeText ("7");
    session_.undo();
    EXPECT_LT (settledRms(), 1e-5);
    session_.turn ({ CardKnob::Place::mixing, "Krummhorn 8", KnobKind::value }, 330e3);
    EXPECT_LT (settledRms(), 1e-5);
    session_.edit ("tuning", [] (BenchWork& work) { work.instrument->tuning.clockHz *= 1.01; });
    EXPECT_GT (settledRms(), 1e-3);
}

TEST_F (TremulantRowTest, OneStepOutRunsInALineOf50MsWithoutAClick)
{
    openView();
    sway();
    row().depth().takeText ("0");
    play (0.3);
    const auto steepest = [this] (double seconds)
    {
        double largest = 0.0;
        double last = 0.0;
        bool isFirst = true;
        for (const double sample : play (seconds))
        {
            largest = isFirst ? 0.0 : std::max (largest, std::abs (sample - last));
            last = sample;
            isFirst = false;
        }
        return largest;
    };
    const double steady = steepest (0.5);
    row().depth().takeText ("95 %");
    EXPECT_LT (steepest (0.5),
               2.1 * steady); // a gain of 1.95 makes the wave that much steeper, a step would be far more
}

TEST_F (TremulantRowTest, UndoGivesTheDocumentBackToTheByte)
{
    openView();
    const auto before = document();
    auto& knob = row().depth();
    knob.grabKeyboardFocus(); // scrolls the list to it
    const auto ring = knob.ringArea().getCentre();
    mousePress (knob, ring);
    for (int step = 1; step <= 5; ++step)
        mouseDragTo (knob, ring.translated (0, -14 * step));
    mouseRelease (knob, ring.translated (0, -70));
    EXPECT_DOUBLE_EQ (settings().depth, 0.8);
    EXPECT_EQ (&row().depth(), &knob) << "the knob in hand outlasts what it turns";
    EXPECT_TRUE (document() != before);
    session_.undo(); // the whole drag
    EXPECT_TRUE (document() == before);
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.redo();
    EXPECT_DOUBLE_EQ (settings().depth, 0.8);
    mouseWheel (knob, ring, -1.0f);
    mouseWheel (row().rate(), row().rate().ringArea().getCentre(), 1.0f);
    EXPECT_DOUBLE_EQ (settings().depth, 0.75);
    EXPECT_DOUBLE_EQ (settings().rateHz, 6.1);
    session_.undo(); // the rate is a step of its own
    EXPECT_DOUBLE_EQ (settings().rateHz, 6.0);
    EXPECT_DOUBLE_EQ (settings().depth, 0.75);
    knob.returnToSaved();
    EXPECT_TRUE (document() == before);
}

TEST_F (TremulantRowTest, ItIsSavedWithTheInstrument)
{
    openView();
    row().depth().takeText ("40 %");
    row().rate().takeText ("5.5 Hz");
    session_.save();
    EXPECT_FALSE (session_.document().isUnsaved());
    EXPECT_EQ (*findTremulant (readInstrument (preset ("LarkfieldOrgan.json")), "Tremulant"),
               (TremulantSettings { 5.5, 0.4 }));
    row().depth().takeText ("50 %");
    row().depth().returnToSaved();
    EXPECT_DOUBLE_EQ (settings().depth, 0.4);
}

TEST_F (TremulantRowTest, WhatIsOutOfRangeIsRefusedInWords)
{
    openView();
    EXPECT_FALSE (row().depth().takeText ("100"));
    EXPECT_FALSE (row().rate().takeText ("30"));
    EXPECT_FALSE (row().rate().takeText ("quick"));
    EXPECT_EQ (settings(), (TremulantSettings { 6.0, 0.3 }));
    for (int leap = 0; leap < 60; ++leap)
    {
        row().depth().keyPressed (key (juce::KeyPress::pageUpKey));
        row().rate().keyPressed (key (juce::KeyPress::pageUpKey));
    }
    EXPECT_EQ (settings(), (TremulantSettings { 20.0, 0.95 }));
}

TEST_F (TremulantRowTest, ItTellsWhatItIs)
{
    openView();
    EXPECT_EQ (row().rate().getTitle(), "Tremulant, rate");
    EXPECT_EQ (row().depth().getTitle(), "Tremulant, depth");
    EXPECT_EQ (row().rate().getDescription(), "6.00 Hz");
    EXPECT_EQ (row().depth().getDescription(), "30 %");
    EXPECT_EQ (termOf (&row().depth()), "tremulant");
    EXPECT_TRUE (row().depth().getTooltip().contains ("40 %")) << row().depth().getTooltip();
}

TEST_F (TremulantRowTest, AnInstrumentWithoutOneShowsNone)
{
    openView();
    ASSERT_NE (view_->rail().findTremulantRow ("Tremulant"), nullptr);
    EXPECT_EQ (view_->rail().findTremulantRow ("Rotary"), nullptr);
    EXPECT_EQ (view_->rail().findTremulantRow ("Main"), nullptr);
    change ("LarkfieldOrgan.json", R"("kind": "tremulant", "tremulant": { "rateHz": 6, "depth": 0.3 }, "on": false)",
            R"("kind": "main")");
    session_.open (preset ("LarkfieldOrgan.json"));
    EXPECT_EQ (view_->rail().findTremulantRow ("Tremulant"), nullptr);
    EXPECT_THROW (session_.turn ({ CardKnob::Place::tremulantDepth, "Tremulant", KnobKind::value }, 0.5), Error);
    session_.open (preset ("Oboe8.json"));
    EXPECT_EQ (view_->rail().findTremulantRow ("Tremulant"), nullptr);
    EXPECT_THROW (session_.turn ({ CardKnob::Place::tremulantDepth, "Tremulant", KnobKind::value }, 0.5), Error);
}

} // namespace stopwright
