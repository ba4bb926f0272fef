// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DeviceSearch.h"

#include <thread>
#include <utility>

namespace stopwright
{

void DeviceSearch::begin (std::function<void()> ask, Told told)
{
    told_ = std::move (told);
    if (isWaiting())
        return;
    waitedMs_ = 0;
    hasAnswer_ = std::make_shared<std::atomic<bool>> (false);
    // A thread that waits for a stuck server cannot be stopped: it is left to itself when the program ends before it.
    std::thread (
        [ask = std::move (ask), hasAnswer = hasAnswer_]
        {
            ask();
            hasAnswer->store (true);
        })
        .detach();
    startTimer (pollMs);
}

void DeviceSearch::timerCallback()
{
    if (hasAnswer_->load())
    {
        stopTimer();
        hasAnswer_.reset();
        const auto told = std::exchange (told_, {});
        if (told.onAnswer)
            told.onAnswer();
        return;
    }
    waitedMs_ += pollMs;
    if (waitedMs_ >= slowMs)
        if (const auto onSlow = std::exchange (told_.onSlow, {}))
            onSlow();
}

} // namespace stopwright
