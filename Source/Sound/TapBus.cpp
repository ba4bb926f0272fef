// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TapBus.h"

#include "Circuit/LinearCircuit.h"

#include <algorithm>

namespace stopwright
{

TapBus::TapBus (const Tap& tap, const GeneratorBank& generators, int waveIndex, const KeySource& source, int maxFrames)
    : name_ (tap.name),
      polarity_ (tap.polarity),
      keyers_ (generators, waveIndex, tap.footage, source.keyer, source.lowestKey, source.highestKey),
      level_ (polarity_ * tap.voltsPeakToPeak, LinearCircuit::rampSeconds, generators.sampleRateHz()),
      bus_ (static_cast<std::size_t> (maxFrames)),
      volts_ (static_cast<std::size_t> (maxFrames))
{}

void TapBus::setLevelTarget (double voltsPeakToPeak) noexcept
{
    level_.setTarget (polarity_ * std::clamp (voltsPeakToPeak, 0.0, highestLevel));
}

void TapBus::key (int key, bool down, int frameOffset) noexcept
{
    if (down)
        keyers_.keyDown (key, frameOffset);
    else
        keyers_.keyUp (key, frameOffset);
}

void TapBus::render (GeneratorBank& generators, int frameCount) noexcept
{
    const auto count = static_cast<std::size_t> (frameCount);
    const auto bus = std::span (bus_).first (count);
    std::fill (bus.begin(), bus.end(), 0.0F);

    // Unit waves on the bus and volts after it: the level keeps all digits that way.
    keyers_.mixInto (bus, 1.0F, generators);
    level_.apply (bus, std::span (volts_).first (count));
}

void TapBus::agreeWith (const HeldKeys& held) noexcept
{
    for (int key = 0; key < HeldKeys::keyCount; ++key)
        this->key (key, held.isDown (key), 0);
}

void TapBus::reset() noexcept
{
    keyers_.reset();
    level_.finish();
}

} // namespace stopwright
