// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SilentClock.h"

namespace stopwright
{

SilentClock::SilentClock (juce::AudioProcessor& processor) : processor_ (processor) {}

SilentClock::~SilentClock()
{
    stop();
}

void SilentClock::start()
{
    if (isTimerRunning())
        return;
    processor_.setPlayConfigDetails (0, 2, rateHz, frames);
    processor_.prepareToPlay (rateHz, frames);
    startTimer (periodMs);
}

void SilentClock::stop()
{
    stopTimer();
}

void SilentClock::hiResTimerCallback()
{
    processor_.processBlock (buffer_, midi_);
}

} // namespace stopwright
