// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyedTone.h"

#include <algorithm>

namespace stopwright
{

namespace
{

/// A bus does not give way faster than this, or the sag would click.
constexpr double shortestSagSeconds = 0.003;

} // namespace

KeyedTone::KeyedTone (const GeneratorBank& generators, const Settings& settings, int maxFrames, int carryFrames)
    : settings_ (settings),
      keyers_ (generators,
               settings.waveIndex,
               settings.footage,
               settings.keyer,
               settings.lowestKey,
               settings.highestKey),
      sag_ (1.0, std::max (shortestSagSeconds, settings.keyer.attackSeconds), generators.sampleRateHz()),
      bus_ (static_cast<std::size_t> (maxFrames)),
      volts_ (static_cast<std::size_t> (maxFrames + carryFrames))
{}

// (Rc + Rl) / (Rc + n Rl) for n keys.
double KeyedTone::sagFactor() const noexcept
{
    return (1.0 + settings_.sag) / (1.0 + std::max (1, heldCount_) * settings_.sag);
}

void KeyedTone::key (int key, bool down, int frameOffset) noexcept
{
    if (key < settings_.lowestKey || key > settings_.highestKey || ! held_.change (key, down))
        return;
    heldCount_ += down ? 1 : -1;
    sag_.setTarget (sagFactor());
    if (down)
        keyers_.keyDown (key, frameOffset + settings_.downDelay);
    else
        keyers_.keyUp (key, frameOffset + settings_.upDelay);
}

void KeyedTone::render (GeneratorBank& generators, int carry, int frameCount) noexcept
{
    const auto bus = std::span (bus_).first (static_cast<std::size_t> (frameCount));
    std::fill (bus.begin(), bus.end(), 0.0F);
    keyers_.mixInto (bus, 1.0F, generators);
    sag_.apply (bus, std::span (volts_).subspan (static_cast<std::size_t> (carry), bus.size()));
}

void KeyedTone::keep (int from, int count) noexcept
{
    std::copy_n (volts_.begin() + from, count, volts_.begin());
}

void KeyedTone::copyKeysFrom (const KeyedTone& other) noexcept
{
    keyers_.copyStateFrom (other.keyers_);
    held_.copyWithin (other.held_, settings_.lowestKey, settings_.highestKey);
    heldCount_ = 0;
    for (int key = settings_.lowestKey; key <= settings_.highestKey; ++key)
        heldCount_ += held_.isDown (key) ? 1 : 0;
    sag_.setTarget (sagFactor());
    sag_.finish();
    std::copy_n (other.volts_.begin(), std::min (volts_.size(), other.volts_.size()), volts_.begin());
}

} // namespace stopwright
