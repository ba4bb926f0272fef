// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/HarmonicPicture.h"

#include <juce_events/juce_events.h>

#include <functional>
#include <mutex>
#include <optional>

namespace stopwright
{

/// Computes harmonic pictures away from the message thread and away from the audio thread. Only the latest request
/// counts: while a knob is turned, pictures that are out of date are skipped.
/// Threading: all functions on the message thread; the result arrives there too.
class HarmonicWorker : private juce::Thread, private juce::AsyncUpdater
{
public:
    explicit HarmonicWorker (std::function<void (const HarmonicPicture&)> onPicture);
    ~HarmonicWorker() override;

    void request (const Card& card, const KeySource& keySource, int key);

    /// Waits until what was requested is computed and delivers it; for tests.
    void finish();

private:
    struct Request
    {
        Card card;
        KeySource keySource;
        int key;
    };

    void run() override;
    void handleAsyncUpdate() override;

    std::function<void (const HarmonicPicture&)> onPicture_;
    std::mutex mutex_;
    std::optional<Request> request_;
    std::optional<HarmonicPicture> picture_;
    juce::WaitableEvent idle_ { true };
};

} // namespace stopwright
