// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ChangesPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/CardDocument.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float rowMargin = 4.0f;
constexpr float wordsLine = 19.0f;
constexpr float wayBackLine = 16.0f;
constexpr float buttonWidth = 96.0f;
constexpr float buttonGap = 12.0f;

} // namespace

ChangesPanel::ChangesPanel (BenchSession& session) : session_ (session)
{
    setTitle ("Changes");
    viewport_.setViewedComponent (&list_, false);
    viewport_.setScrollBarsShown (true, false);
    addAndMakeVisible (viewport_);
    session_.addListener (*this);
    rebuild();
}

ChangesPanel::~ChangesPanel()
{
    session_.removeListener (*this);
}

void ChangesPanel::sessionChanged (BenchSession::Change change)
{
    // The buttons may be in one of their own callbacks.
    if (change != BenchSession::Change::saved)
        juce::MessageManager::callAsync (
            [safe = juce::Component::SafePointer<ChangesPanel> (this)]
            {
                if (safe != nullptr)
                    safe->rebuild();
            });
}

void ChangesPanel::rebuild()
{
    const auto& instrument = session_.document().instrument;
    alterations_ = instrument ? changeList (*instrument, session_.cardsInWork()) : changeList (session_.card());
    list_.buttons.clear();
    for (std::size_t index = 0; index < alterations_.size(); ++index)
    {
        auto button = std::make_unique<juce::TextButton> ("Put back");
        button->setTitle ("Put back: " + fromUtf8 (alterations_[index].words));
        button->onClick = [this, index] { putBack (index); };
        list_.addAndMakeVisible (*button);
        list_.buttons.push_back (std::move (button));
    }
    resized();
    repaint();
}

void ChangesPanel::putBack (std::size_t index)
{
    const auto alteration = alterations_.at (index);
    session_.attempt (
        [&]
        {
            session_.edit (
                "put back: " + alteration.words,
                [&] (BenchWork& work)
                {
                    if (! alteration.isOfTap())
                    {
                        work.instrument = revert (std::move (*work.instrument), alteration);
                        return;
                    }
                    auto trial = work.trials.find (alteration.cardFile);
                    if (trial == work.trials.end())
                        trial = work.trials
                                    .emplace (alteration.cardFile,
                                              TrialPair {
                                                  readCard (session_.document().fileOfCard (alteration.cardFile)), {} })
                                    .first;
                    auto& card = trial->second.inHand();
                    card = revert (Card (card), alteration);
                });
        });
}

void ChangesPanel::resized()
{
    viewport_.setScrollBarThickness (Lettering::px (12.0f));
    viewport_.setBounds (getLocalBounds());
    const int width = getWidth() - viewport_.getScrollBarThickness();
    const int button = Lettering::px (buttonWidth);
    const int textWidth = width - button - Lettering::px (buttonGap);
    list_.rows.clear();
    int top = 0;
    for (std::size_t index = 0; index < alterations_.size(); ++index)
    {
        Row row { Lettering::wrapped (Lettering::strong(), fromUtf8 (alterations_[index].words), textWidth),
                  Lettering::wrapped (Lettering::small(), fromUtf8 (alterations_[index].wayBack), textWidth),
                  {} };
        const int tall = Lettering::px (wordsLine) * row.words.size() + Lettering::px (wayBackLine) * row.wayBack.size()
                         + Lettering::px (2.0f * rowMargin);
        row.area = { 0, top, width, tall };
        list_.buttons[index]->setBounds (
            juce::Rectangle<int> (row.area).removeFromRight (button).withSizeKeepingCentre (button,
                                                                                            Lettering::px (30.0f)));
        top += tall;
        list_.rows.push_back (std::move (row));
    }
    list_.setSize (width, std::max (1, top));
    list_.repaint();
}

void ChangesPanel::paint (juce::Graphics& graphics)
{
    if (! alterations_.empty())
        return;
    graphics.setColour (BenchLook::paletteOf (*this).faintInk);
    Lettering::draw (graphics, *this, "Everything is as it was found.", Lettering::body(), getLocalBounds(),
                     juce::Justification::centredTop);
}

void ChangesPanel::List::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    for (const auto& row : rows)
    {
        graphics.setColour (colours.hairline);
        graphics.drawHorizontalLine (row.area.getY(), 0.0f, static_cast<float> (getWidth()));
        auto area = row.area.reduced (0, Lettering::px (rowMargin));
        graphics.setColour (colours.ink);
        for (const auto& line : row.words)
            Lettering::draw (graphics, *this, line, Lettering::strong(),
                             area.removeFromTop (Lettering::px (wordsLine)));
        graphics.setColour (colours.faintInk);
        for (const auto& line : row.wayBack)
            Lettering::draw (graphics, *this, line, Lettering::small(),
                             area.removeFromTop (Lettering::px (wayBackLine)));
    }
}

} // namespace stopwright
