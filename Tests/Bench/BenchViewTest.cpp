// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"
#include "Bench/CautionsText.h"
#include "Organ/CardDocument.h"

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <set>

namespace stopwright
{

namespace
{

class BenchViewTest : public BenchFixture
{
protected:
    static juce::TextButton* findButton (juce::Component& within, const juce::String& text)
    {
        for (int index = within.getNumChildComponents(); --index >= 0;)
        {
            auto* child = within.getChildComponent (index);
            auto* button = dynamic_cast<juce::TextButton*> (child);
            if (button != nullptr && button->isVisible() && button->getButtonText() == text)
                return button;
            if (auto* found = findButton (*child, text))
                return found;
        }
        return nullptr;
    }

    /// Presses a button of the page that is up.
    void click (const juce::String& text)
    {
        auto* const page = findWithin<SheetPage> (*view_);
        ASSERT_NE (page, nullptr) << "no page is up";
        auto* button = findButton (*page, text);
        ASSERT_NE (button, nullptr) << text;
        button->onClick();
        runMessages (30);
    }
};

} // namespace

TEST_F (BenchViewTest, TheFirstRunShowsTheCautionsUntilTheyAreAcknowledged)
{
    openView().begin();
    ASSERT_TRUE (view_->isPageUp());
    EXPECT_FALSE (settings_->areCautionsAcknowledged());
    view_->keyPressed (juce::KeyPress (juce::KeyPress::escapeKey));
    EXPECT_TRUE (view_->isPageUp());
    click ("I have read this");
    EXPECT_FALSE (view_->isPageUp());
    EXPECT_TRUE (settings_->areCautionsAcknowledged());

    view_->begin();
    EXPECT_FALSE (view_->isPageUp());
}

TEST_F (BenchViewTest, TheCautionsAreThoseOfTheProject)
{
    const auto text = cautionsForReading();
    for (const auto* word : { "kill", "Unplug", "discharge", "electrical rules", "damage hearing", "models" })
        EXPECT_TRUE (text.contains (word)) << word;
}

TEST_F (BenchViewTest, NothingBehindAPageIsPlayedOrTurned)
{
    openView().begin();
    const auto before = cardText (session_.card());
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    view_->keyPressed (juce::KeyPress ('z', juce::ModifierKeys::commandModifier, 0));
    EXPECT_NE (cardText (session_.card()), before);
    click ("I have read this");
    view_->keyPressed (juce::KeyPress ('z', juce::ModifierKeys::commandModifier, 0));
    EXPECT_EQ (cardText (session_.card()), before);
    view_->keyPressed (juce::KeyPress ('y', juce::ModifierKeys::commandModifier, 0));
    EXPECT_EQ (value ("R5"), 1e3);
}

TEST_F (BenchViewTest, UnsavedChangesAreAskedAboutAndCanBeKept)
{
    openView();
    bool hasGoneOn = false;
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 22e3);
    view_->actions().whenSafe ([&] { hasGoneOn = true; });
    EXPECT_TRUE (view_->isPageUp());
    click ("Keep working");
    EXPECT_FALSE (hasGoneOn);
    EXPECT_TRUE (session_.document().isUnsaved());

    view_->actions().whenSafe ([&] { hasGoneOn = true; });
    click ("Save");
    EXPECT_TRUE (hasGoneOn);
    EXPECT_FALSE (session_.document().isUnsaved());
    EXPECT_EQ (cardText (readCard (preset ("Krummhorn8.json"))), cardText (session_.card()));
}

TEST_F (BenchViewTest, SavingUnderANameAsksBeforeAnotherCardIsLost)
{
    openView();
    std::filesystem::copy_file (preset ("Oboe8.json"), preset ("Reed.json"));
    const auto before = cardText (readCard (preset ("Reed.json")));
    for (const auto* const name : { "Reed", "Reed.json" })
    {
        view_->actions().saveUnder (juce::File (preset (name).string()));
        ASSERT_TRUE (view_->isPageUp()) << name;
        click ("Keep it");
        EXPECT_EQ (cardText (readCard (preset ("Reed.json"))), before);
    }
    view_->actions().saveUnder (juce::File (preset ("Reed").string()));
    click ("Replace it");
    EXPECT_EQ (cardText (readCard (preset ("Reed.json"))), cardText (session_.card()));

    view_->actions().saveUnder (juce::File (preset ("Reed.v2").string()));
    EXPECT_FALSE (view_->isPageUp());
    EXPECT_TRUE (std::filesystem::exists (preset ("Reed.v2.json")));
}

TEST_F (BenchViewTest, TheCardOfAnotherTabletOfTheOrganIsNotSavedOver)
{
    openView();
    const auto before = cardText (readCard (preset ("Oboe8.json")));
    for (const auto* const name : { "Oboe8", "Oboe8.json" })
    {
        session_.say ({});
        view_->actions().saveUnder (juce::File (preset (name).string()));
        EXPECT_FALSE (view_->isPageUp());
        EXPECT_TRUE (view_->messages().sentence().contains ("Oboe 8")) << view_->messages().sentence();
        EXPECT_EQ (cardText (readCard (preset ("Oboe8.json"))), before);
    }
}

TEST_F (BenchViewTest, WithoutADocumentThereIsNothingToSave)
{
    BenchSession empty { processor_ };
    view_ = std::make_unique<BenchView> (empty, *settings_, nullptr);
    const auto files = std::distance (std::filesystem::directory_iterator (folder_), {});
    EXPECT_TRUE (view_->keyPressed (juce::KeyPress ('s', juce::ModifierKeys::commandModifier, 0)));
    EXPECT_EQ (std::distance (std::filesystem::directory_iterator (folder_), {}), files);
    view_.reset();
}

TEST_F (BenchViewTest, WithoutChangesNothingIsAsked)
{
    openView();
    bool hasGoneOn = false;
    view_->actions().whenSafe ([&] { hasGoneOn = true; });
    EXPECT_TRUE (hasGoneOn);
    EXPECT_FALSE (view_->isPageUp());
}

TEST_F (BenchViewTest, ABadFileIsExplainedInTheWindow)
{
    openView();
    std::ofstream (preset ("Bad.json")) << "no JSON at all";
    EXPECT_FALSE (view_->actions().openNow (juce::File (preset ("Bad.json").string())));
    EXPECT_TRUE (view_->messages().sentence().contains ("Bad.json")) << view_->messages().sentence();
    EXPECT_TRUE (view_->actions().openNow (juce::File (preset ("Oboe8.json").string())));
    EXPECT_TRUE (view_->messages().sentence().isEmpty());
    EXPECT_EQ (settings_->recentFiles()[0], juce::String (preset ("Oboe8.json").string()));
}

TEST_F (BenchViewTest, EveryControlIsReachedWithTheTabKey)
{
    openView();
    std::set<juce::Component*> reachable;
    const auto traverser = view_->createKeyboardFocusTraverser();
    for (auto* component : traverser->getAllComponents (view_.get()))
        reachable.insert (component);

    std::function<void (juce::Component&)> check = [&] (juce::Component& parent)
    {
        for (auto* child : parent.getChildren())
        {
            if (child->isVisible() && child->getWantsKeyboardFocus())
            {
                EXPECT_TRUE (reachable.contains (child)) << child->getTitle();
                EXPECT_TRUE (child->getTitle().isNotEmpty() || dynamic_cast<juce::Button*> (child) != nullptr)
                    << "a control without a name to read aloud";
            }
            check (*child);
        }
    };
    check (*view_);
    EXPECT_GE (reachable.size(), 20u);
}

TEST_F (BenchViewTest, SettingsLastFromOneRunToTheNext)
{
    openView().setNight (true);
    view_->setTextScale (1.3f);
    view_->sheet().onSeriesChosen (Series::e24);
    view_->chooseLevelUnit (LevelUnit::dbv);
    EXPECT_EQ (view_->readings().choices().unit, LevelUnit::dbv);
    view_.reset();
    settings_.reset();
    settings_ = std::make_unique<BenchSettings> (juce::File ((folder_ / "configuration").string()));
    EXPECT_TRUE (settings_->isNight());
    EXPECT_NEAR (settings_->textScale(), 1.3f, 1e-6f);
    EXPECT_EQ (settings_->series(), Series::e24);
    EXPECT_EQ (settings_->levelUnit(), LevelUnit::dbv);
    settings_->setLevelUnit (static_cast<LevelUnit> (77)); // as in a file that was edited by hand
    EXPECT_EQ (settings_->levelUnit(), LevelUnit::voltsPeakToPeak);
}

TEST_F (BenchViewTest, ASaveThatWorksTakesAwayWhyOneDidNot)
{
    openView();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    session_.say ("Krummhorn8.json cannot be written.");
    session_.save();
    EXPECT_EQ (view_->messages().sentence(), "");
}

TEST_F (BenchViewTest, WhereTheCopyOfATabletsCardIsIsTold)
{
    openView();
    session_.saveAs (folder_ / "MyReed.json");
    EXPECT_TRUE (view_->messages().sentence().contains ("MyReed.json"));
    EXPECT_TRUE (view_->messages().sentence().contains ("Krummhorn8.json"));
    session_.open (preset ("Oboe8.json"));
    session_.saveAs (folder_ / "MyOboe.json");
    EXPECT_EQ (view_->messages().sentence(), "") << "that card goes on under the new name";
}

} // namespace stopwright
