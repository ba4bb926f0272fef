// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TrialBar.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/TrialDifference.h"

#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float sideOfLetter = 34.0f;
constexpr double unheardDb = 0.05;

} // namespace

TrialBar::TrialBar (BenchSession& session, TrialMatcher& matcher, Actions actions)
    : session_ (session),
      matcher_ (matcher),
      actions_ (std::move (actions))
{
    setTitle ("Trials");
    a_.setTooltip ("Trial A: the card as it is. The key B changes between A and B, both heard equally loud.");
    b_.setTooltip (
        "Trial B: another set of values, or another network, of the same stop, to be compared with A. It begins "
        "as a copy.");
    menu_.setTooltip (
        "Trial B from a card, copying, keeping one of them, by which measure they are made equally loud, and "
        "a blind test.");
    a_.setClickingTogglesState (false);
    a_.onClick = [this] { take (false); };
    b_.onClick = [this] { take (true); };
    menu_.onClick = [this] { showMenu(); };
    for (auto* button : { &a_, &b_, &menu_ })
        addAndMakeVisible (button);
    matcher_.onComparison = [this] { refresh(); };
    session_.addListener (*this);
    sessionChanged (BenchSession::Change::document);
}

TrialBar::~TrialBar()
{
    session_.removeListener (*this);
    matcher_.onComparison = nullptr;
}

void TrialBar::take (bool isB)
{
    session_.attempt (
        [&]
        {
            if (! session_.hasTwoTrials())
            {
                if (isB)
                    session_.beginSecondTrial();
                return;
            }
            if (isB != session_.isSecondTrial())
                matcher_.take (isB);
        });
}

void TrialBar::flip()
{
    if (session_.isOpen())
        take (! session_.isSecondTrial());
}

juce::String TrialBar::levelText()
{
    const auto& comparison = matcher_.comparison();
    if (! comparison)
        return {};
    const double difference = comparison->differenceDb (matcher_.measure());
    const juce::String unit = matcher_.measure() == LevelMeasure::rms ? " dB" : " dB(A)";
    if (std::abs (difference) < unheardDb)
        return "equally loud";
    return "B " + juce::String (std::abs (difference), 1) + unit + (difference > 0.0 ? " louder" : " softer")
           + ", heard equal";
}

juce::String TrialBar::partsText() const
{
    const auto& pair = session_.document().pair();
    return pair.b ? fromUtf8 (differenceWords (trialDifferences (pair.a, *pair.b))) : juce::String();
}

void TrialBar::sessionChanged (BenchSession::Change)
{
    const bool hasTwo = session_.hasTwoTrials();
    a_.setEnabled (session_.isOpen());
    b_.setEnabled (session_.isOpen());
    menu_.setEnabled (session_.isOpen());
    a_.setToggleState (session_.isOpen() && ! session_.isSecondTrial(), juce::dontSendNotification);
    b_.setToggleState (session_.isSecondTrial(), juce::dontSendNotification);
    b_.setButtonText (hasTwo ? "B" : "+ B");
    parts_ = hasTwo ? partsText() : juce::String();
    refresh();
    resized();
}

void TrialBar::refresh()
{
    level_ = session_.hasTwoTrials() ? levelText() : juce::String();
    setTooltip (session_.hasTwoTrials() ? level_ + (level_.isEmpty() ? "" : ". ") + "A / B: " + parts_ + "."
                                        : juce::String());
    repaint();
}

juce::String TrialBar::text() const
{
    return level_ + (level_.isNotEmpty() && parts_.isNotEmpty() ? "; " : "") + parts_;
}

void TrialBar::showMenu()
{
    const bool hasTwo = session_.hasTwoTrials();
    const auto change = [this] (void (BenchSession::*what)())
    { return [this, what] { session_.attempt ([this, what] { (session_.*what)(); }); }; };
    const juce::String here = session_.isSecondTrial() ? "B" : "A";
    const juce::String there = session_.isSecondTrial() ? "A" : "B";

    juce::PopupMenu menu;
    menu.addItem ("Begin B as a copy of A", ! hasTwo, false, change (&BenchSession::beginSecondTrial));
    menu.addItem ("Take a card as B...", actions_.loadSecond);
    menu.addItem ("Copy " + here + " to " + there, hasTwo, false, change (&BenchSession::copyToOtherTrial));
    menu.addItem ("Keep " + here + " alone", hasTwo, false, change (&BenchSession::keepTrialInHand));
    menu.addSeparator();
    const auto measure = [this] (LevelMeasure wanted) { return [this, wanted] { matcher_.setMeasure (wanted); }; };
    menu.addItem ("Equally loud by ear's weighting, dB(A)", true, matcher_.measure() == LevelMeasure::aWeighted,
                  measure (LevelMeasure::aWeighted));
    menu.addItem ("Equally loud by rms volts", true, matcher_.measure() == LevelMeasure::rms,
                  measure (LevelMeasure::rms));
    menu.addSeparator();
    menu.addItem ("Blind test...", hasTwo, false, actions_.blindTest);
    menu.showMenuAsync (
        juce::PopupMenu::Options().withTargetComponent (menu_).withParentComponent (getTopLevelComponent()));
}

void TrialBar::resized()
{
    auto area = getLocalBounds();
    a_.setBounds (area.removeFromLeft (Lettering::px (sideOfLetter)));
    b_.setBounds (area.removeFromLeft (widthOfB()));
    menu_.setBounds (area.removeFromRight (widthOfMenu()));
}

int TrialBar::widthOfB() const
{
    return std::max (Lettering::px (sideOfLetter),
                     Lettering::widthOf (Lettering::body(), b_.getButtonText()) + Lettering::px (18.0f));
}

int TrialBar::widthOfMenu() const
{
    return Lettering::widthOf (Lettering::body(), menu_.getButtonText()) + Lettering::px (22.0f);
}

int TrialBar::leastWidth() const
{
    return Lettering::px (sideOfLetter) + widthOfB() + widthOfMenu();
}

void TrialBar::paint (juce::Graphics& graphics)
{
    const auto area = getLocalBounds()
                          .withLeft (b_.getRight() + Lettering::px (8.0f))
                          .withRight (menu_.getX() - Lettering::px (8.0f));
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    const auto font = Lettering::small();
    for (const auto& text : { this->text(), level_, parts_ })
    {
        if (text.isEmpty() || Lettering::widthOf (font, text) > area.getWidth())
            continue;
        Lettering::draw (graphics, *this, text, font, area);
        return;
    }
}

} // namespace stopwright
