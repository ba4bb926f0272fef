// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingWorker.h"

#include "Bench/BenchFixture.h"
#include "Bench/SmallCard.h"

namespace stopwright
{

namespace
{

class ReadingWorkerTest : public BenchFixture
{
protected:
    static ReadingRequest requestOf (int key, ReadingKind kind = ReadingKind::harmonics)
    {
        ReadingChoices choices;
        choices.kind = kind;
        const auto card = test::smallCard();
        return { choices, key, card, keySourceForCardAlone (card) };
    }

    std::vector<ReadingResult> results_;
    ReadingWorker worker_ { [this] (ReadingResult result) { results_.push_back (std::move (result)); } };
};

} // namespace

TEST_F (ReadingWorkerTest, OnlyTheLatestRequestCounts)
{
    for (int key = 36; key <= 60; ++key)
        worker_.request (requestOf (key), true);
    worker_.finish();
    ASSERT_EQ (results_.size(), 1u);
    EXPECT_EQ (results_.back().key, 60);
    worker_.finish();
    EXPECT_EQ (results_.size(), 1u) << "delivered once";
}

TEST_F (ReadingWorkerTest, AnUnsoundCardIsRefusedInWords)
{
    auto request = requestOf (60);
    request.card.output = std::string ("nowhere");
    worker_.request (request, true);
    worker_.finish();
    ASSERT_EQ (results_.size(), 1u);
    EXPECT_GT (results_.back().refusal.size(), 10u);
    EXPECT_NE (results_.back().as<std::monostate>(), nullptr);
}

TEST_F (ReadingWorkerTest, ALongReadingStopsWhenItIsNotWanted)
{
    int asked = 0;
    const auto result = requestOf (60, ReadingKind::compass).compute ([&] { return ++asked > 3; });
    EXPECT_FALSE (result.has_value());
    EXPECT_EQ (asked, 5) << "three keys, the refusal, and the look afterwards";
}

TEST_F (ReadingWorkerTest, TheStagesOfEveryKeyStopWhenTheyAreNotWanted)
{
    ReadingChoices choices;
    choices.kind = ReadingKind::stages;
    choices.stageKeys = StageKeys::everyKey;
    ReadingRequest request { choices, 60, session_.card(), session_.keySource() };
    request.instrument = session_.document().instrument;
    request.cards = session_.cardsThatSound();
    request.stop = "Krummhorn 8";
    request.division = session_.document().stopInHand()->division;
    int whole = 0;
    const auto finished = request.compute ([&] { return ++whole < 0; });
    ASSERT_TRUE (finished && finished->as<StageReading>() != nullptr);
    int asked = 0;
    EXPECT_FALSE (request.compute ([&] { return ++asked >= 3; }).has_value());
    EXPECT_EQ (asked, 4) << "two pitch classes, the refusal, and the look afterwards";
    EXPECT_LT (4 * asked, whole);
}

} // namespace stopwright
