// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyHolders.h"
#include "Sound/RenderSource.h"
#include "Sound/Voice.h"

#include <array>
#include <memory>

namespace stopwright
{

/// Renders a voice by itself, in volts. Several keyboards may play one division: a key sounds until the last lets go.
/// Threading: [control].
class VoltsSource : public RenderSource
{
public:
    VoltsSource (std::unique_ptr<Voice> voice, double leadInSeconds, std::vector<std::string> clipNames);

    double leadInSeconds() const override { return leadInSeconds_; }

    int delayFrames() const override { return voice_->delayFrames(); }

    void setSwell (double position) override { voice_->setSwell (position); }

    void process (std::span<const KeyEvent> events, std::span<float> out) override;

    bool hasFault() const override { return voice_->hasFault(); }

    std::uint64_t clips() const override { return clips_; }

    std::vector<std::string> clipNames() const override { return clipNames_; }

private:
    void key (const KeyEvent& event, int frame) noexcept;

    std::unique_ptr<Voice> voice_;
    double leadInSeconds_;
    std::vector<std::string> clipNames_;
    std::array<KeyHolders, Keyboard::midiChannels> holders_ {}; ///< by division
    std::array<double, blockFrames> volts_ {};
    std::uint64_t clips_ = 0;
};

} // namespace stopwright
