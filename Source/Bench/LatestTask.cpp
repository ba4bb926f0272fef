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

void LatestTask::run (Work work)
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
        Work work;
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
        auto done = work ([this] { return isUnwanted(); });
        if (! done)
            continue;
        {
            const std::scoped_lock lock (mutex_);
            done_ = std::move (done);
        }
        triggerAsyncUpdate();
    }
}

bool LatestTask::isUnwanted()
{
    const std::scoped_lock lock (mutex_);
    return threadShouldExit() || (isWaitedFor_ && waiting_);
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
    {
        const std::scoped_lock lock (mutex_);
        isWaitedFor_ = true;
    }
    idle_.wait (-1);
    {
        const std::scoped_lock lock (mutex_);
        isWaitedFor_ = false;
    }
    handleUpdateNowIfNeeded();
}

} // namespace stopwright
