// SPDX-License-Identifier: GPL-3.0-or-later
//
// BenchSession with two trials of a stop.
#include "Bench/BenchFixture.h"
#include "Organ/CardDocument.h"
#include "Units/Decibels.h"

namespace stopwright
{

namespace
{

class SessionTrialsTest : public BenchFixture
{
protected:
    void turn (double ohms) { session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, ohms); }
};

} // namespace

TEST_F (SessionTrialsTest, BBeginsAsACopyAndIsTurnedAlone)
{
    EXPECT_THROW (session_.flipTrial(), Error);
    const double saved = value ("R5");
    session_.beginSecondTrial();
    EXPECT_TRUE (session_.isSecondTrial());
    turn (1e3);
    session_.flipTrial();
    EXPECT_EQ (value ("R5"), saved);
    session_.flipTrial();
    EXPECT_EQ (value ("R5"), 1e3);
}

TEST_F (SessionTrialsTest, TheFlipIsHeardWithItsGain)
{
    processor_.engine().key (60, true);
    const double a = settledRms();
    session_.beginSecondTrial();
    turn (1e3);
    const double b = settledRms();
    ASSERT_LT (b, 0.7 * a);
    session_.flipTrial (toDecibels (b / a));
    EXPECT_NEAR (toDecibels (settledRms() / b), 0.0, 0.05);
    session_.flipTrial (0.0);
    EXPECT_NEAR (toDecibels (settledRms() / b), 0.0, 0.05);
}

TEST_F (SessionTrialsTest, CopyingAndKeepingAreUndoneToTheByte)
{
    const auto before = cardText (session_.card());
    session_.beginSecondTrial();
    turn (1e3);
    session_.copyToOtherTrial();
    EXPECT_EQ (cardText (session_.document().pair().a), cardText (*session_.document().pair().b));
    session_.keepTrialInHand();
    EXPECT_FALSE (session_.hasTwoTrials());
    EXPECT_EQ (value ("R5"), 1e3);
    while (session_.history().canUndo())
        session_.undo();
    EXPECT_FALSE (session_.hasTwoTrials());
    EXPECT_EQ (cardText (session_.card()), before);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (SessionTrialsTest, BIsSavedBesideTheCardAndFoundAgain)
{
    const auto card = cardText (session_.card());
    session_.beginSecondTrial();
    turn (1e3);
    session_.save();
    EXPECT_EQ (cardText (readCard (preset ("Krummhorn8.json"))), card);
    EXPECT_EQ (valueOf (readCard (preset ("Krummhorn8.B.json")), { CardKnob::Place::part, "R5", KnobKind::value }),
               1e3);

    session_.open (preset ("LarkfieldOrgan.json"));
    ASSERT_TRUE (session_.hasTwoTrials());
    EXPECT_FALSE (session_.isSecondTrial());
    EXPECT_FALSE (session_.document().isUnsaved());
    session_.keepTrialInHand();
    session_.save();
    EXPECT_FALSE (std::filesystem::exists (preset ("Krummhorn8.B.json")));
}

TEST_F (SessionTrialsTest, AnotherCardCanBeB)
{
    session_.loadSecondTrial (preset ("Oboe8.json"));
    EXPECT_EQ (session_.card().name, "Oboe 8");
    processor_.engine().key (60, true);
    EXPECT_GT (settledRms(), 1e-3);
    EXPECT_THROW (session_.loadSecondTrial (preset ("Absent.json")), Error);
    EXPECT_EQ (session_.card().name, "Oboe 8");
}

} // namespace stopwright
