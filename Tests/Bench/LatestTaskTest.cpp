// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LatestTask.h"

#include <gtest/gtest.h>
#include <juce_gui_basics/juce_gui_basics.h>

#include <atomic>
#include <chrono>
#include <memory>
#include <thread>

namespace stopwright
{

namespace
{

constexpr int mostWaits = 2000;

void rest()
{
    std::this_thread::sleep_for (std::chrono::milliseconds (1));
}

/// What a long piece of work tells and is told.
struct LongWork
{
    std::atomic<bool> isBegun { false };
    std::atomic<bool> mayEnd { false };
    std::atomic<bool> gaveUp { false };
};

LatestTask::Work longWork (const std::shared_ptr<LongWork>& told, int& delivered)
{
    return [told, &delivered] (const IsUnwanted& isUnwanted) -> std::function<void()>
    {
        told->isBegun = true;
        for (int wait = 0; wait < mostWaits && ! told->mayEnd; ++wait)
        {
            if (isUnwanted())
            {
                told->gaveUp = true;
                return {};
            }
            rest();
        }
        return [&delivered] { ++delivered; };
    };
}

void await (const std::atomic<bool>& flag)
{
    for (int wait = 0; wait < mostWaits && ! flag; ++wait)
        rest();
}

class LatestTaskTest : public testing::Test
{
protected:
    /// Returns once the first is under way and the second waits for it.
    void runLongWorkAndThenMore()
    {
        task_.run (longWork (told_, first_));
        await (told_->isBegun);
        task_.run ([this] (const IsUnwanted&) { return [this] { ++second_; }; });
    }

    juce::ScopedJuceInitialiser_GUI juce_;
    int first_ = 0;
    int second_ = 0;
    const std::shared_ptr<LongWork> told_ = std::make_shared<LongWork>();
    LatestTask task_;
};

} // namespace

TEST_F (LatestTaskTest, WorkGivesUpWhenLaterWorkIsWaitedFor)
{
    runLongWorkAndThenMore();
    task_.finish();
    EXPECT_TRUE (told_->gaveUp);
    EXPECT_EQ (first_, 0);
    EXPECT_EQ (second_, 1);
}

TEST_F (LatestTaskTest, WithoutAnyoneWaitingWorkRunsToItsEnd)
{
    runLongWorkAndThenMore();
    std::this_thread::sleep_for (std::chrono::milliseconds (20));
    EXPECT_FALSE (told_->gaveUp);
    told_->mayEnd = true;
    task_.finish();
    EXPECT_EQ (second_, 1);
}

TEST_F (LatestTaskTest, TheLatestIsNotInItsOwnWay)
{
    task_.run (longWork (told_, first_));
    await (told_->isBegun);
    std::thread later (
        [&]
        {
            std::this_thread::sleep_for (std::chrono::milliseconds (20));
            told_->mayEnd = true;
        });
    task_.finish();
    later.join();
    EXPECT_FALSE (told_->gaveUp);
    EXPECT_EQ (first_, 1);
}

} // namespace stopwright
