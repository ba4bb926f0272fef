// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DeviceSearch.h"

#include "Bench/BenchFixture.h"

namespace stopwright
{

namespace
{

/// A sound server that answers when it is let.
class DeviceSearchTest : public BenchFixture
{
protected:
    void search()
    {
        search_.begin (
            [answers = answers_, asked = asked_]
            {
                asked->fetch_add (1);
                answers->wait (-1);
            },
            { [this] { ++slow_; }, [this] { ++answered_; } });
    }

    void waitForAnswer()
    {
        for (int wait = 0; wait < 500 && search_.isWaiting(); ++wait)
            runMessages (20);
    }

    std::shared_ptr<juce::WaitableEvent> answers_ = std::make_shared<juce::WaitableEvent> (true);
    std::shared_ptr<std::atomic<int>> asked_ = std::make_shared<std::atomic<int>> (0);
    int slow_ = 0;
    int answered_ = 0;
    DeviceSearch search_;
};

} // namespace

TEST_F (DeviceSearchTest, TellsWhenThereIsAnAnswer)
{
    answers_->signal();
    search();
    EXPECT_TRUE (search_.isWaiting());
    EXPECT_EQ (answered_, 0) << "from the message loop, not from within";
    waitForAnswer();
    EXPECT_EQ (answered_, 1);
    EXPECT_EQ (slow_, 0);
}

TEST_F (DeviceSearchTest, WhileAServerIsStuckTheMessagesGoOnAndItIsToldOnce)
{
    search();
    search(); // asks nobody a second time
    runMessages (2 * DeviceSearch::slowMs);
    EXPECT_EQ (slow_, 1);
    EXPECT_EQ (answered_, 0);
    EXPECT_EQ (asked_->load(), 1);
    answers_->signal();
    waitForAnswer();
    EXPECT_EQ (answered_, 1);

    search(); // again
    waitForAnswer();
    EXPECT_EQ (answered_, 2);
}

TEST_F (DeviceSearchTest, OfTwoWhoWaitTheNewerIsTold)
{
    search();
    runMessages (2 * DeviceSearch::slowMs);
    ASSERT_EQ (slow_, 1);
    int newerSlow = 0;
    int newerAnswered = 0;
    search_.begin ([] { FAIL() << "nobody is asked a second time"; },
                   { [&] { ++newerSlow; }, [&] { ++newerAnswered; } });
    runMessages (200);
    EXPECT_EQ (newerSlow, 1) << "there is no answer yet for this one either";
    answers_->signal();
    waitForAnswer();
    EXPECT_EQ (answered_, 0);
    EXPECT_EQ (newerAnswered, 1);
    EXPECT_EQ (slow_, 1);
}

TEST_F (DeviceSearchTest, ItMayEndBeforeTheServerAnswers)
{
    {
        DeviceSearch other;
        other.begin ([answers = answers_] { answers->wait (-1); }, { {}, [this] { ++answered_; } });
    }
    answers_->signal();
    runMessages (100);
    EXPECT_EQ (answered_, 0);
}

} // namespace stopwright
