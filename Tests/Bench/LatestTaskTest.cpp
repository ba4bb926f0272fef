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
private:
    juce::ScopedJuceInitialiser_GUI juce_;
};

} // namespace

TEST_F (LatestTaskTest, WorkGivesUpWhenLaterWorkIsWaitedFor)
{
    int first = 0;
    int second = 0;
    const auto told = std::make_shared<LongWork>();
    LatestTask task;
    task.run (longWork (told, first));
    await (told->isBegun);
    task.run ([&] (const IsUnwanted&) { return [&] { ++second; }; });
    task.finish();
    EXPECT_TRUE (told->gaveUp);
    EXPECT_EQ (first, 0);
    EXPECT_EQ (second, 1);
}

TEST_F (LatestTaskTest, WithoutAnyoneWaitingWorkRunsToItsEnd)
{
    int first = 0;
    int second = 0;
    const auto told = std::make_shared<LongWork>();
    LatestTask task;
    task.run (longWork (told, first));
    await (told->isBegun);
    task.run ([&] (const IsUnwanted&) { return [&] { ++second; }; });
    std::this_thread::sleep_for (std::chrono::milliseconds (20));
    EXPECT_FALSE (told->gaveUp);
    told->mayEnd = true;
    task.finish();
    EXPECT_EQ (second, 1);
}

TEST_F (LatestTaskTest, TheLatestIsNotInItsOwnWay)
{
    int delivered = 0;
    const auto told = std::make_shared<LongWork>();
    LatestTask task;
    task.run (longWork (told, delivered));
    await (told->isBegun);
    std::thread later (
        [&]
        {
            std::this_thread::sleep_for (std::chrono::milliseconds (20));
            told->mayEnd = true;
        });
    task.finish();
    later.join();
    EXPECT_FALSE (told->gaveUp);
    EXPECT_EQ (delivered, 1);
}

} // namespace stopwright
