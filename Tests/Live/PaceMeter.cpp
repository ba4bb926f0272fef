// SPDX-License-Identifier: GPL-3.0-or-later
#include "Live/PaceMeter.h"

namespace stopwright::live
{

PaceMeter::PaceMeter()
{
    setSize (2, 2);
    setInterceptsMouseClicks (false, false);
    startTimerHz (60);
}

void PaceMeter::begin()
{
    handled_.clear();
    answers_.clear();
    frames_.clear();
    lastFrameMs_ = -1.0;
}

void PaceMeter::noteHandled (double postedMs)
{
    handled_.push_back (postedMs);
    repaint();
}

void PaceMeter::paint (juce::Graphics& graphics)
{
    graphics.fillAll (juce::Colours::grey);
    const double now = juce::Time::getMillisecondCounterHiRes();
    for (; ! handled_.empty(); handled_.pop_front())
        answers_.push_back (now - handled_.front());
    if (lastFrameMs_ >= 0.0)
        frames_.push_back (now - lastFrameMs_);
    lastFrameMs_ = now;
    if (onFrame)
        onFrame();
}

} // namespace stopwright::live
