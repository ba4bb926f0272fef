// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingRequest.h"

#include <juce_events/juce_events.h>

#include <functional>
#include <mutex>
#include <optional>

namespace stopwright
{

/// Computes readings away from the message thread and away from the audio thread, one at a time. Only the latest request
/// counts: while a knob is turned, readings that are out of date are skipped.
/// Threading: all functions on the message thread; the result arrives there too.
class ReadingWorker : private juce::Thread, private juce::AsyncUpdater
{
public:
    explicit ReadingWorker (std::function<void (ReadingResult)> onResult);
    ~ReadingWorker() override;

    /// With `isOther`, what is being computed is of no use any more and stops as soon as it can; without it, it is
    /// delivered first, so that a picture moves while a knob is turned.
    void request (ReadingRequest request, bool isOther);

    /// Waits until what was requested is computed and delivers it; for tests.
    void finish();

private:
    void run() override;
    void handleAsyncUpdate() override;

    std::function<void (ReadingResult)> onResult_;
    std::mutex mutex_;
    std::optional<ReadingRequest> request_;
    std::optional<ReadingResult> result_;
    bool isRunningUnwanted_ = false; ///< under the mutex like the two above
    juce::WaitableEvent idle_ { true };
};

} // namespace stopwright
