// SPDX-License-Identifier: GPL-3.0-or-later
//
// The window by keyboard alone: where the Tab key goes, that it is seen there, and what each control says of itself.
#include "Bench/BenchFixture.h"
#include "Bench/GlossaryTerms.h"
#include "Command/TradeGlossary.h"

#include <algorithm>
#include <functional>
#include <set>

namespace stopwright
{

namespace
{

class FocusWalkTest : public BenchFixture
{
protected:
    static void forEach (juce::Component& parent, const std::function<void (juce::Component&)>& action)
    {
        for (auto* child : parent.getChildren())
        {
            action (*child);
            forEach (*child, action);
        }
    }

    /// What the keyboard must reach: shown, enabled, and made for it.
    std::set<juce::Component*> controls()
    {
        std::set<juce::Component*> found;
        forEach (*view_,
                 [&] (juce::Component& component)
                 {
                     if (! isOnDesk (component) && component.isShowing() && component.isEnabled()
                         && component.getWantsKeyboardFocus() && ! component.getBounds().isEmpty())
                         found.insert (&component);
                 });
        return found;
    }

    /// What the part desk shows follows the part that has the keyboard: it is walked by itself.
    bool isOnDesk (const juce::Component& component) const { return view_->sheet().desk().isParentOf (&component); }

    void press (const juce::KeyPress& key) { view_->getPeer()->handleKeyPress (key); }

    static std::string nameOf (const juce::Component* component)
    {
        if (component == nullptr)
            return "nothing";
        const auto* button = dynamic_cast<const juce::Button*> (component);
        return (button != nullptr ? button->getButtonText() : component->getTitle()).toStdString();
    }

    /// Presses a key until the first control comes round again; what had the keyboard on the way.
    std::vector<juce::Component*> walk (const juce::KeyPress& key, juce::Component& start, std::size_t most)
    {
        start.grabKeyboardFocus();
        std::vector<juce::Component*> path;
        do
        {
            auto* const focused = juce::Component::getCurrentlyFocusedComponent();
            if (focused == nullptr || ! isOnDesk (*focused))
                path.push_back (focused);
            press (key);
        } while (juce::Component::getCurrentlyFocusedComponent() != &start && path.size() <= most);
        return path;
    }

    void expectARoundOfEverything()
    {
        const auto wanted = controls();
        auto& start = view_->playBar().keyboard();
        const juce::KeyPress tab (juce::KeyPress::tabKey);
        const juce::KeyPress backTab (juce::KeyPress::tabKey, juce::ModifierKeys::shiftModifier, 0);
        const auto path = walk (tab, start, wanted.size() + 5);
        auto back = walk (backTab, start, wanted.size() + 5);
        const std::set<juce::Component*> reached (path.begin(), path.end());
        EXPECT_EQ (reached.size(), path.size()) << "a control is reached twice on one round";
        for (auto* control : wanted)
            EXPECT_TRUE (reached.contains (control)) << nameOf (control) << " is not reached";
        for (auto* control : reached)
            EXPECT_TRUE (wanted.contains (control)) << nameOf (control) << " is reached though it is no control";
        std::reverse (back.begin() + 1, back.end());
        EXPECT_EQ (path, back) << "the way back is another";
    }
};

} // namespace

TEST_F (FocusWalkTest, TabReachesEveryControlOfAnInstrumentOnceAndComesRound)
{
    openView();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3); // undo is enabled
    EXPECT_GE (controls().size(), 30U);
    expectARoundOfEverything();
}

TEST_F (FocusWalkTest, F3GoesFromAPartToItsDeskAndTabWalksIt)
{
    openView();
    view_->sheet().schematic().takeHold ({ false, "L1" });
    press (juce::KeyPress (juce::KeyPress::F3Key));
    std::set<std::string> reached;
    for (int step = 0; step < 6; ++step)
    {
        auto* const focused = juce::Component::getCurrentlyFocusedComponent();
        ASSERT_NE (focused, nullptr);
        if (! isOnDesk (*focused))
            break;
        reached.insert (nameOf (focused));
        press (juce::KeyPress (juce::KeyPress::tabKey));
    }
    EXPECT_TRUE (reached.contains ("Rename") && reached.contains ("Remove") && reached.contains ("lead 1"))
        << reached.size();
    EXPECT_GE (reached.size(), 6U); // two numbers, two leads, two buttons
}

TEST_F (FocusWalkTest, TabReachesEveryControlOfACardAndWhileAPiecePlays)
{
    session_.open (preset ("Krummhorn8.json"));
    openView();
    EXPECT_GE (controls().size(), 15U);
    expectARoundOfEverything();
    view_->player().playScale (0);
    play (0.1);
    view_->tick();
    session_.say ("A sentence to put away.");
    expectARoundOfEverything();
}

TEST_F (FocusWalkTest, AControlThatHasTheKeyboardLooksDifferent)
{
    openView();
    const auto pictureOf = [] (juce::Component& component)
    { return component.createComponentSnapshot (component.getLocalBounds(), true); };
    for (auto* control : controls())
    {
        auto& elsewhere = control == &view_->playBar().keyboard() ? static_cast<juce::Component&> (view_->level())
                                                                  : view_->playBar().keyboard();
        control->grabKeyboardFocus();
        ASSERT_EQ (juce::Component::getCurrentlyFocusedComponent(), control) << nameOf (control);
        const auto focused = pictureOf (*control);
        elsewhere.grabKeyboardFocus();
        const auto plain = pictureOf (*control);
        int changed = 0;
        for (int y = 0; y < plain.getHeight(); ++y)
            for (int x = 0; x < plain.getWidth(); ++x)
                changed += plain.getPixelAt (x, y) != focused.getPixelAt (x, y) ? 1 : 0;
        EXPECT_GE (changed, 40) << nameOf (control) << " does not show that it has the keyboard";
    }
}

TEST_F (FocusWalkTest, EscapeStopsEverythingFromEveryControl)
{
    openView();
    for (auto* control : controls())
    {
        view_->playBar().setHold (true);
        processor_.engine().key (50, true);
        view_->player().playFullChord (0);
        play (0.05);
        ASSERT_GT (processor_.engine().telemetry().soundingKeys, 10);
        control->grabKeyboardFocus();
        press (juce::KeyPress (juce::KeyPress::escapeKey));
        play (0.05);
        EXPECT_EQ (processor_.engine().telemetry().soundingKeys, 0) << "from " << nameOf (control);
        EXPECT_FALSE (view_->player().isPlaying());
        view_->tick();
    }
}

TEST_F (FocusWalkTest, EveryControlHasATooltipAndEveryTermIsInTheGlossary)
{
    openView();
    session_.say ("A sentence to put away.");
    for (auto* control : controls())
    {
        auto* client = dynamic_cast<juce::TooltipClient*> (control);
        ASSERT_NE (client, nullptr) << nameOf (control);
        EXPECT_GE (client->getTooltip().length(), 12) << nameOf (control);
    }

    int terms = 0;
    forEach (*view_,
             [&] (juce::Component& component)
             {
                 const auto term = termOf (&component);
                 terms += term.isNotEmpty() ? 1 : 0;
                 EXPECT_TRUE (term.isEmpty() || tradeGlossary().find (term.toStdString()) != nullptr) << term;
             });
    EXPECT_GE (terms, 30);
}

} // namespace stopwright
