// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingWorker.h"

#include "Bench/WorkerNice.h"

#include <utility>

namespace stopwright
{

ReadingWorker::ReadingWorker (std::function<void (ReadingResult)> onResult)
    : juce::Thread ("readings"),
      onResult_ (std::move (onResult))
{
    startThread();
}

ReadingWorker::~ReadingWorker()
{
    cancelPendingUpdate();
    stopThread (-1);
}

void ReadingWorker::request (ReadingRequest request, bool isOther)
{
    {
        const std::scoped_lock lock (mutex_);
        request_ = std::move (request);
        if (isOther)
        {
            isRunningUnwanted_ = true;
            result_.reset();
        }
        idle_.reset();
    }
    notify();
}

void ReadingWorker::run()
{
    stepBack();
    const auto isUnwanted = [this]
    {
        const std::scoped_lock lock (mutex_);
        return isRunningUnwanted_ || threadShouldExit();
    };
    while (! threadShouldExit())
    {
        std::optional<ReadingRequest> request;
        {
            const std::scoped_lock lock (mutex_);
            request = std::exchange (request_, std::nullopt);
            isRunningUnwanted_ = false;
            if (! request)
                idle_.signal();
        }
        if (! request)
        {
            wait (-1);
            continue;
        }

        auto result = request->compute (isUnwanted);
        {
            const std::scoped_lock lock (mutex_);
            if (! result || isRunningUnwanted_)
                continue;
            result_ = std::move (result);
        }
        triggerAsyncUpdate();
    }
}

void ReadingWorker::handleAsyncUpdate()
{
    std::optional<ReadingResult> result;
    {
        const std::scoped_lock lock (mutex_);
        result = std::exchange (result_, std::nullopt);
    }
    if (result)
        onResult_ (std::move (*result));
}

void ReadingWorker::finish()
{
    idle_.wait();
    handleUpdateNowIfNeeded();
}

} // namespace stopwright
