// SPDX-License-Identifier: GPL-3.0-or-later
//
// The pages of BenchView about the work itself: the list of changes, the blind test, and taking a card as trial B.
#include "Bench/BenchView.h"
#include "Bench/BlindTestPanel.h"
#include "Bench/ChangesPanel.h"
#include "Bench/Lettering.h"
#include "Bench/UsualPlaces.h"

#include <random>

namespace stopwright
{

void BenchView::showChanges()
{
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Close", [this] { closePage(); } });
    auto page = std::make_unique<SheetPage> (
        "Changes at the organ",
        "What is otherwise than it was found at the organ, tablet by tablet, and what to solder to put it back there. \"Put "
        "back\" does it in the document, and can be undone. Parts of a card that were turned, added or soldered elsewhere do "
        "not stand here: Undo goes back over those.",
        std::move (choices), std::make_unique<ChangesPanel> (session_), Lettering::px (ChangesPanel::height));
    page->setClosedByEscape();
    showPage (std::move (page));
}

void BenchView::showBlindTest()
{
    if (sheet_.isRetired())
    {
        session_.say (session_.document().stopInHand()->name
                      + " is retired, so neither of its trials is heard; draw it, and then compare.");
        return;
    }
    std::random_device device;
    const auto seed = (static_cast<std::uint64_t> (device()) << 32U) | device();
    const auto leave = [this]
    {
        player_.stop();
        closePage();
    };
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Close", [this, leave]
                         {
                             if (mayPageGo())
                                 leave();
                         } });
    auto controls = std::make_unique<BlindTestPanel> (session_, matcher_, player_, seed);
    controls->onThrownAway = leave;
    auto& panel = *controls;
    auto page = std::make_unique<SheetPage> (
        "Blind test",
        "X is trial A or trial B, drawn anew in every round. Play keys or the phrase, listen to A, B and X as often as you "
        "like, and say which X is. All are heard equally loud. As many rounds as you want: ten or more tell something. The "
        "score comes out when you finish.",
        std::move (choices), std::move (controls), Lettering::px (BlindTestPanel::height));
    page->setFirstFocus (panel.listenTo ('A')); // Return on the way in must not close it
    page->setMayGo ([&panel] { return panel.mayGo(); });
    page->setListeningOnly();
    page->setClosedByEscape();
    showPage (std::move (page));
}

void BenchView::askForSecondTrial()
{
    trialChooser_ =
        std::make_unique<juce::FileChooser> ("A card to be trial B", folderOf (session_.document()), "*.json");
    trialChooser_->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                                [this] (const juce::FileChooser& chooser)
                                {
                                    if (const auto file = chooser.getResult(); file != juce::File())
                                        session_.attempt (
                                            [&] { session_.loadSecondTrial (file.getFullPathName().toStdString()); });
                                });
}

} // namespace stopwright
