// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WorkKeeper.h"

#include "Bench/BenchFixture.h"
#include "Bench/WorkText.h"
#include "Organ/CardDocument.h"

namespace stopwright
{

namespace
{

class WorkKeeperTest : public BenchFixture
{
protected:
    juce::File place() const { return { (folder_ / "kept").string() }; }

    void turn (double ohms) { session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, ohms); }
};

} // namespace

TEST_F (WorkKeeperTest, KeepsWhatIsUnsavedAndTakesItAwayWhenNothingIs)
{
    WorkKeeper keeper (session_, place());
    EXPECT_FALSE (keeper.takeLeft());
    keeper.begin();
    turn (1e3);
    keeper.keep();
    keeper.finish();
    EXPECT_TRUE (keeper.file().existsAsFile());
    session_.save();
    keeper.keep();
    keeper.finish();
    EXPECT_FALSE (keeper.file().existsAsFile());
}

TEST_F (WorkKeeperTest, KeepsOnItsOwnWithinTwoSecondsWhileAKnobIsDragged)
{
    WorkKeeper keeper (session_, place());
    keeper.begin();
    session_.beginGesture();
    turn (1e3);
    runMessages (1500);
    keeper.finish();
    ASSERT_TRUE (keeper.file().existsAsFile());
    const auto kept = parseKeptWork (keeper.file().loadFileAsString().toStdString());
    EXPECT_EQ (valueOf (kept.work.card(), { CardKnob::Place::part, "R5", KnobKind::value }), 1e3);
    session_.endGesture();
}

TEST_F (WorkKeeperTest, GivesBackWhatARunLeft)
{
    const auto saved = cardText (session_.card());
    session_.beginSecondTrial();
    turn (1e3);
    const auto second = cardText (session_.card());
    session_.chooseStop (stop ("Oboe 8"));
    session_.turn ({ CardKnob::Place::mixing, "Oboe 8", KnobKind::value }, 33e3);
    place().createDirectory();
    place().getChildFile ("kept-work-1.json").replaceWithText (juce::String (keptWorkText (session_.document())));

    session_.open (preset ("LarkfieldOrgan.json"));
    WorkKeeper keeper (session_, place());
    const auto left = keeper.takeLeft();
    ASSERT_TRUE (left);
    EXPECT_FALSE (keeper.takeLeft());
    const auto kept = parseKeptWork (left->text.toStdString());
    EXPECT_EQ (kept.file, preset ("LarkfieldOrgan.json"));
    session_.restore (kept.work);
    EXPECT_EQ (session_.card().name, "Oboe 8");
    EXPECT_EQ (session_.document().stopInHand()->mixingOhms, 33e3);
    session_.chooseStop (stop ("Krummhorn 8"));
    EXPECT_EQ (cardText (session_.card()), second);

    // It stays until this run keeps it itself.
    keeper.begin();
    keeper.keep();
    keeper.finish();
    EXPECT_NE (keeper.file(), left->file);
    EXPECT_TRUE (left->file.existsAsFile());
    WorkKeeper::forget (*left);
    EXPECT_FALSE (left->file.existsAsFile());

    session_.undo();
    EXPECT_EQ (cardText (session_.document().trials.at ("Krummhorn8.json").a), saved);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (WorkKeeperTest, WhatCannotBeReadIsPutAside)
{
    place().createDirectory();
    place().getChildFile ("kept-work-1.json").replaceWithText ("{ \"kind\": \"kept work\", ");
    WorkKeeper keeper (session_, place());
    const auto left = keeper.takeLeft();
    ASSERT_TRUE (left);
    EXPECT_THROW (parseKeptWork (left->text.toStdString()), Error);
    EXPECT_TRUE (WorkKeeper::putAside (*left).existsAsFile());
    EXPECT_FALSE (left->file.existsAsFile());
}

TEST_F (WorkKeeperTest, ItLiesBesideTheSettings)
{
    settings_->setNight (true);
    settings_.reset(); // writes the file
    const auto own = BenchSettings::programFolder (juce::File ((folder_ / "configuration").string()));
    ASSERT_TRUE (own.getChildFile ("bench.settings").existsAsFile());
    EXPECT_EQ (BenchSettings::programFolder(), BenchSettings::configurationFolder().getChildFile ("stopwright"));
    WorkKeeper keeper (session_, own);
    keeper.begin();
    turn (1e3);
    keeper.keep();
    keeper.finish();
    EXPECT_TRUE (own.getChildFile ("kept-work-1.json").existsAsFile());
    keeper.endInGoodOrder();
}

TEST_F (WorkKeeperTest, OnlyEndingInGoodOrderLeavesNothing)
{
    juce::File file;
    for (const bool isGood : { true, false })
    {
        WorkKeeper keeper (session_, place());
        keeper.begin();
        turn (isGood ? 1e3 : 2e3);
        keeper.keep();
        file = keeper.file();
        if (isGood)
        {
            keeper.endInGoodOrder();
            EXPECT_FALSE (file.existsAsFile());
        }
    }
    EXPECT_TRUE (file.existsAsFile());
}

} // namespace stopwright
