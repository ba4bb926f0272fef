// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LatestTask.h"

#include "Bench/WorkerNice.h"

#include <utility>

namespace stopwright
{

LatestTask::LatestTask() : Thread ("work beside the window")
{
    idle_.signal();
    startThread();
}

LatestTask::~LatestTask()
{
    signalThreadShouldExit();
    notify();
    stopThread (-1);
    cancelPendingUpdate();
}

void LatestTask::run (std::function<std::function<void()>()> work)
{
    {
        const std::scoped_lock lock (mutex_);
        waiting_ = std::move (work);
        idle_.reset();
    }
    notify();
}

void LatestTask::run()
{
    stepBack();
    while (! threadShouldExit())
    {
        std::function<std::function<void()>()> work;
        {
            const std::scoped_lock lock (mutex_);
            work = std::exchange (waiting_, {});
            if (! work)
                idle_.signal();
        }
        if (! work)
        {
            wait (-1);
            continue;
        }
        auto done = work();
        {
            const std::scoped_lock lock (mutex_);
            done_ = std::move (done);
        }
        triggerAsyncUpdate();
    }
}

void LatestTask::handleAsyncUpdate()
{
    std::function<void()> done;
    {
        const std::scoped_lock lock (mutex_);
        done = std::exchange (done_, {});
    }
    if (done)
        done();
}

void LatestTask::finish()
{
    idle_.wait (-1);
    handleUpdateNowIfNeeded();
}

} // namespace stopwright
