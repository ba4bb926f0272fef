// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_events/juce_events.h>

#include <functional>
#include <mutex>

namespace stopwright
{

/// Asked from within work whether its answer is in the way of one that somebody waits for.
using IsUnwanted = std::function<bool()>;

/// Works things out away from the message thread, one at a time; of those that wait only the latest counts.
/// Threading: all functions on the message thread.
class LatestTask : private juce::Thread, private juce::AsyncUpdater
{
public:
    LatestTask();
    ~LatestTask() override;

    using Work = std::function<std::function<void()> (const IsUnwanted&)>;

    /// Runs `work` on the thread; what it gives back is run on the message thread afterwards. `work` may use nothing
    /// but what it holds itself, and must not throw. It may give up with nothing once it is told to: while finish() waits
    /// for later work. Before, it runs to its end, so that answers go on coming in while a hand turns something.
    void run (Work work);

    /// Waits until the latest work is done and delivered.
    void finish();

private:
    void run() override;
    bool isUnwanted();
    void handleAsyncUpdate() override;

    std::mutex mutex_;
    Work waiting_;
    std::function<void()> done_;
    bool isWaitedFor_ = false;
    juce::WaitableEvent idle_ { true };
};

} // namespace stopwright
