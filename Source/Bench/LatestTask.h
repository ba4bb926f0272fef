// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_events/juce_events.h>

#include <functional>
#include <mutex>

namespace stopwright
{

/// Works things out away from the message thread, one at a time; of those that wait only the latest counts.
/// Threading: all functions on the message thread.
class LatestTask : private juce::Thread, private juce::AsyncUpdater
{
public:
    LatestTask();
    ~LatestTask() override;

    /// Runs `work` on the thread; what it gives back is run on the message thread afterwards. `work` may use nothing
    /// but what it holds itself, and must not throw.
    void run (std::function<std::function<void()>()> work);

    /// Waits until all is done and delivered.
    void finish();

private:
    void run() override;
    void handleAsyncUpdate() override;

    std::mutex mutex_;
    std::function<std::function<void()>()> waiting_;
    std::function<void()> done_;
    juce::WaitableEvent idle_ { true };
};

} // namespace stopwright
