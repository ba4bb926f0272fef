// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <deque>
#include <functional>
#include <vector>

namespace stopwright::live
{

/// A spot of the window that is painted sixty times a second, after all else: what it sees is how often the window gets
/// to paint, and how long after an event what the event did is painted. Threading: message thread.
class PaceMeter : public juce::Component, private juce::Timer
{
public:
    PaceMeter();

    /// Begins anew, without what was seen.
    void begin();

    /// An event that came at `postedMs` (juce::Time::getMillisecondCounterHiRes) has been handled.
    void noteHandled (double postedMs);

    /// Milliseconds from an event until what it did was painted, one for each event, in order.
    const std::vector<double>& answers() const noexcept { return answers_; }

    /// Milliseconds between one frame and the next.
    const std::vector<double>& frames() const noexcept { return frames_; }

    /// Called at each frame.
    std::function<void()> onFrame;

    void paint (juce::Graphics& graphics) override;

private:
    void timerCallback() override { repaint(); }

    std::deque<double> handled_; ///< not painted yet
    std::vector<double> answers_;
    std::vector<double> frames_;
    double lastFrameMs_ = -1.0;
};

} // namespace stopwright::live
