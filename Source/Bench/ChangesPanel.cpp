// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ChangesPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/CardDocument.h"

namespace stopwright
{

namespace
{

constexpr float rowPoints = 58.0f;
constexpr float buttonWidth = 96.0f;

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

int ChangesPanel::rowHeight() const
{
    return Lettering::px (rowPoints);
}

void ChangesPanel::resized()
{
    viewport_.setScrollBarThickness (Lettering::px (12.0f));
    viewport_.setBounds (getLocalBounds());
    list_.setSize (getWidth() - viewport_.getScrollBarThickness(),
                   std::max (1, rowHeight() * static_cast<int> (alterations_.size())));
    for (std::size_t index = 0; index < list_.buttons.size(); ++index)
    {
        auto row =
            list_.getLocalBounds().withHeight (rowHeight()).translated (0, static_cast<int> (index) * rowHeight());
        list_.buttons[index]->setBounds (
            row.removeFromRight (Lettering::px (buttonWidth))
                .withSizeKeepingCentre (Lettering::px (buttonWidth), Lettering::px (30.0f)));
    }
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
    for (std::size_t index = 0; index < panel_.alterations_.size(); ++index)
    {
        const auto& alteration = panel_.alterations_[index];
        auto row = getLocalBounds()
                       .withHeight (panel_.rowHeight())
                       .translated (0, static_cast<int> (index) * panel_.rowHeight())
                       .withTrimmedRight (Lettering::px (buttonWidth + 12.0f));
        graphics.setColour (colours.hairline);
        graphics.drawHorizontalLine (row.getY(), 0.0f, static_cast<float> (getWidth()));
        row.reduce (0, Lettering::px (4.0f));
        graphics.setColour (colours.ink);
        graphics.setFont (Lettering::strong());
        graphics.drawFittedText (fromUtf8 (alteration.words), row.removeFromTop (Lettering::px (19.0f)),
                                 juce::Justification::centredLeft, 1);
        graphics.setColour (colours.faintInk);
        graphics.setFont (Lettering::small());
        graphics.drawFittedText (fromUtf8 (alteration.wayBack), row, juce::Justification::topLeft, 2);
    }
}

} // namespace stopwright
