// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PlayerActions.h"
#include "Bench/TrialMatcher.h"
#include "Study/BlindTest.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The controls of a blind test of the two trials: what is listened to, what the listener says, and, when he has finished,
/// how it ended. Nothing in it shows which trial sounds. Threading: message thread.
class BlindTestPanel : public juce::Component
{
public:
    static constexpr float height = 176.0f; ///< at lettering scale 1

    BlindTestPanel (BenchSession& session, TrialMatcher& matcher, PlayerActions& player, std::uint64_t seed);

    /// The result, once there is one.
    juce::String resultText() const { return result_; }

    /// Whether nothing would be lost with the panel. When something would, it says so and offers to throw that away.
    bool mayGo();

    /// The answers, or a result that is not kept, are to go, and the panel with them.
    std::function<void()> onThrownAway;

    /// The buttons, by what is on them and whether they say or listen; for tests.
    juce::TextButton& listenTo (char what) { return what == 'A' ? playA_ : what == 'B' ? playB_ : playX_; }

    juce::TextButton& say (char what) { return what == 'A' ? isA_ : isB_; }

    juce::TextButton& finish() noexcept { return finish_; }

    juce::TextButton& keep() noexcept { return keep_; }

    juce::TextButton& throwAway() noexcept { return throwAway_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void listen (bool isB);
    void answer (BlindTest::Trial said);
    void finishTest();
    void keepInNotes();
    juce::Rectangle<int> row (int index) const;
    bool wouldLose() const;
    void tellLoss (bool isTold);
    juce::String roundText() const;
    juce::String lossText() const;

    BenchSession& session_;
    TrialMatcher& matcher_;
    PlayerActions& player_;
    BlindTest test_;
    juce::String result_;
    juce::TextButton playA_ { "A" }, playB_ { "B" }, playX_ { "X" };
    juce::TextButton isA_ { "A" }, isB_ { "B" };
    juce::TextButton phrase_ { "Play the phrase" };
    juce::TextButton finish_ { "Finish the test" };
    juce::TextButton keep_ { "Keep it in the card's notes" };
    juce::TextButton throwAway_ { "Throw it away" }; ///< seen while it is told what would be lost
};

} // namespace stopwright
