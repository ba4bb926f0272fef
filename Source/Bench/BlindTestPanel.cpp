// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BlindTestPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/UsualPlaces.h"
#include "Organ/TrialDifference.h"

namespace stopwright
{

namespace
{

constexpr float rowHeight = 40.0f;
constexpr float labelWidth = 120.0f;
constexpr float gap = 8.0f;

int widthOf (const juce::TextButton& button)
{
    return Lettering::widthOf (Lettering::body(), button.getButtonText()) + Lettering::px (32.0f);
}

} // namespace

BlindTestPanel::BlindTestPanel (BenchSession& session, TrialMatcher& matcher, PlayerActions& player, std::uint64_t seed)
    : session_ (session),
      matcher_ (matcher),
      player_ (player),
      test_ (seed)
{
    playA_.onClick = [this] { listen (false); };
    playB_.onClick = [this] { listen (true); };
    playX_.onClick = [this] { listen (test_.x() == BlindTest::Trial::b); };
    isA_.onClick = [this] { answer (BlindTest::Trial::a); };
    isB_.onClick = [this] { answer (BlindTest::Trial::b); };
    finish_.onClick = [this] { finishTest(); };
    keep_.onClick = [this] { keepInNotes(); };
    throwAway_.onClick = [panel = SafePointer<BlindTestPanel> (this)]
    {
        // The button goes with the panel: not while it is clicked.
        juce::MessageManager::callAsync (
            [panel]
            {
                if (panel != nullptr && panel->onThrownAway)
                    panel->onThrownAway();
            });
    };
    phrase_.onClick = [this]
    {
        tellLoss (false);
        if (const auto phrase = demonstrationPhrase(); phrase != juce::File())
            player_.playNow (phrase);
    };
    isA_.setTitle ("X sounds like A");
    isB_.setTitle ("X sounds like B");
    isA_.setTooltip ("Your answer in this round: X is trial A. The next round begins.");
    isB_.setTooltip ("Your answer in this round: X is trial B. The next round begins.");
    playA_.setTooltip ("Hear trial A, as loud as B.");
    playB_.setTooltip ("Hear trial B, as loud as A.");
    playX_.setTooltip ("Hear X: one of the two, drawn anew in every round.");
    finish_.setTooltip ("The score comes out when the test is finished, and then there are no more answers.");
    for (auto* button : { &playA_, &playB_, &playX_, &isA_, &isB_, &phrase_, &finish_ })
        addAndMakeVisible (button);
    addChildComponent (keep_);
    addChildComponent (throwAway_);
}

/// The same happens whichever trial it is, also when it sounds already: a missing cross-fade would tell.
void BlindTestPanel::listen (bool isB)
{
    tellLoss (false);
    session_.attempt ([&] { matcher_.take (isB, true); });
}

void BlindTestPanel::answer (BlindTest::Trial said)
{
    test_.answer (said);
    // The next round begins from the same sound whatever X was.
    listen (false);
}

void BlindTestPanel::finishTest()
{
    test_.finish();
    result_ = juce::String (test_.result().words()) + ".";
    for (auto* button : { &playX_, &isA_, &isB_, &finish_ })
        button->setVisible (false);
    keep_.setVisible (test_.result().rounds > 0);
    tellLoss (false);
}

void BlindTestPanel::keepInNotes()
{
    const auto& pair = session_.document().pair();
    if (! pair.b)
        return;
    const auto date = juce::Time::getCurrentTime().formatted ("%Y-%m-%d").toStdString();
    const auto line = test_.result().noteLine (date, differenceWords (trialDifferences (pair.a, *pair.b)));
    const auto addTo = [&line] (Card& card) { card.note += (card.note.empty() ? "" : "\n") + line; };
    keep_.setEnabled (! session_.attempt (
        [&]
        {
            session_.edit ("blind test in the notes",
                           [&] (BenchWork& work)
                           {
                               addTo (work.pair().a);
                               if (work.pair().b)
                                   addTo (*work.pair().b);
                           });
        }));
    if (! keep_.isEnabled())
        keep_.setButtonText ("Kept in the card's notes");
    tellLoss (false);
}

bool BlindTestPanel::wouldLose() const
{
    return test_.round() > 1 && keep_.isEnabled();
}

bool BlindTestPanel::mayGo()
{
    tellLoss (wouldLose());
    return ! wouldLose();
}

void BlindTestPanel::tellLoss (bool isTold)
{
    throwAway_.setButtonText (test_.isFinished() ? "Throw it away" : "Throw the answers away");
    throwAway_.setVisible (isTold);
    resized();
    repaint();
}

juce::String BlindTestPanel::lossText() const
{
    if (! throwAway_.isVisible())
        return {};
    return test_.isFinished() ? "The result is not in the card's notes yet."
                              : "Your answers so far would be lost: finish the test, or throw them away.";
}

juce::String BlindTestPanel::roundText() const
{
    if (test_.isFinished())
        return result_;
    if (lossText().isNotEmpty())
        return {};
    return "Round " + juce::String (test_.round()) + ". Listen as often as you like, then say it.";
}

juce::Rectangle<int> BlindTestPanel::row (int index) const
{
    return getLocalBounds()
        .withHeight (Lettering::px (rowHeight))
        .translated (0, index * Lettering::px (rowHeight + 4.0f));
}

void BlindTestPanel::resized()
{
    const auto place = [] (juce::Rectangle<int> line, std::initializer_list<juce::TextButton*> buttons)
    {
        for (auto* button : buttons)
        {
            if (! button->isVisible())
                continue;
            button->setBounds (line.removeFromLeft (widthOf (*button)).reduced (0, Lettering::px (4.0f)));
            line.removeFromLeft (Lettering::px (gap));
        }
    };
    const int inset = Lettering::px (labelWidth);
    place (row (1).withTrimmedLeft (inset), { &playA_, &playB_, &playX_, &phrase_ });
    place (row (2).withTrimmedLeft (inset), { &isA_, &isB_, &keep_ });
    place (row (3).withTrimmedLeft (inset), { &finish_, &throwAway_ });
}

void BlindTestPanel::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.notice);
    // Of a finished test the first row has the result.
    Lettering::draw (graphics, *this, lossText(), Lettering::strong(),
                     test_.isFinished() ? row (3).withLeft (throwAway_.getRight() + Lettering::px (gap)) : row (0));
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, roundText(), Lettering::strong(), row (0));
    const int width = Lettering::px (labelWidth);
    Lettering::draw (graphics, *this, "Listen to", Lettering::body(), row (1).withWidth (width));
    if (! test_.isFinished())
        Lettering::draw (graphics, *this, "X sounds like", Lettering::body(), row (2).withWidth (width));
}

} // namespace stopwright
