// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_events/juce_events.h>

#include <atomic>
#include <functional>
#include <memory>

namespace stopwright
{

/// Asks for sound devices on a thread of its own before the message thread does, for a sound server that is stuck keeps
/// whoever asks waiting for minutes. Nobody else may ask while it waits. Threading: message thread.
class DeviceSearch : private juce::Timer
{
public:
    /// An answer that takes longer is slow.
    static constexpr int slowMs = 2000;

    struct Told
    {
        std::function<void()> onSlow;   ///< once, when there is no answer yet, also to who comes later
        std::function<void()> onAnswer; ///< from now on asking does not wait
    };

    /// `ask` runs on the thread and may outlive this object: it may use nothing but what it holds itself. While a search
    /// is waiting nobody is asked again, and `told` takes the place of who was to be told: of two requests the newer counts.
    void begin (std::function<void()> ask, Told told);

    bool isWaiting() const noexcept { return hasAnswer_ != nullptr; }

private:
    void timerCallback() override;

    static constexpr int pollMs = 20;

    std::shared_ptr<std::atomic<bool>> hasAnswer_; ///< shared with the thread; null while none is waiting
    Told told_;
    int waitedMs_ = 0;
};

} // namespace stopwright
