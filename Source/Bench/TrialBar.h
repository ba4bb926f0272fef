// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/TrialMatcher.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// The two trials of the stop in hand: which is in hand, how far they are apart in level, and in which parts they differ.
/// Threading: message thread.
class TrialBar : public juce::Component, public juce::SettableTooltipClient, private BenchSession::Listener
{
public:
    struct Actions
    {
        std::function<void()> loadSecond; ///< asks for a card to be trial B
        std::function<void()> blindTest;
    };

    TrialBar (BenchSession& session, TrialMatcher& matcher, Actions actions);
    ~TrialBar() override;

    /// Takes the other trial in hand; begins B where there is none.
    void flip();

    juce::TextButton& button (bool isB) noexcept { return isB ? b_ : a_; }

    juce::TextButton& menuButton() noexcept { return menu_; }

    /// "B is 2.3 dB(A) louder, heard equal; R5 47k / 10k", as far as there is room.
    juce::String text() const;

    /// What its buttons need, without any text.
    int leastWidth() const;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void refresh();
    void sessionChanged (BenchSession::Change change) override;
    void take (bool isB);
    void showMenu();
    juce::String levelText();
    juce::String partsText() const;
    int widthOfB() const;
    int widthOfMenu() const;

    BenchSession& session_;
    TrialMatcher& matcher_;
    Actions actions_;
    juce::TextButton a_ { "A" };
    juce::TextButton b_ { "B" };
    juce::TextButton menu_ { "Trials" };
    juce::String level_;
    juce::String parts_;
};

} // namespace stopwright
