// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/VoltsSource.h"

#include "Sound/FlushToZero.h"
#include "Sound/Pieces.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

VoltsSource::VoltsSource (std::unique_ptr<Voice> voice, double leadInSeconds, std::vector<std::string> clipNames)
    : voice_ (std::move (voice)),
      leadInSeconds_ (leadInSeconds),
      clipNames_ (std::move (clipNames))
{}

void VoltsSource::process (std::span<const KeyEvent> events, std::span<float> out)
{
    const FlushToZero flushToZero;
    const auto volts = std::span (volts_).first (out.size());
    runInPieces (
        events, static_cast<int> (out.size()), [this] (const KeyEvent& event, int frame) { key (event, frame); },
        [&] (int start, int count)
        { voice_->renderPiece (volts.subspan (static_cast<std::size_t> (start), static_cast<std::size_t> (count))); });
    std::ranges::transform (volts, out.begin(), [] (double value) { return static_cast<float> (value); });
    clips_ |= voice_->takeClips();
}

void VoltsSource::key (const KeyEvent& event, int frame) noexcept
{
    const int division = event.keyboard >= Keyboard::midiChannels ? event.keyboard - Keyboard::midiChannels
                                                                  : voice_->divisionOfChannel (event.keyboard + 1);
    if (division < 0 || division >= static_cast<int> (holders_.size()))
        return;
    if (holders_[static_cast<std::size_t> (division)].change (event.key, event.keyboard, event.down))
        voice_->key (division, event.key, event.down, frame);
}

} // namespace stopwright
