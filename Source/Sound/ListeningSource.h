// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Engine.h"
#include "Sound/RenderSource.h"

namespace stopwright
{

/// Renders what the live engine plays, at its start level. Threading: [control].
class ListeningSource : public RenderSource
{
public:
    /// Fails: Error (rate).
    explicit ListeningSource (const StreamSpec& spec) { engine_.prepare (spec); }

    /// To be set to a card or an instrument before the first block.
    Engine& engine() noexcept { return engine_; }

    /// The engine comes out of silence in 200 ms; a phrase begins after that.
    double leadInSeconds() const override { return 0.3; }

    int delayFrames() const override { return engine_.latencyFrames(); }

    void setSwell (double position) override { engine_.setSwell (position); }

    void process (std::span<const KeyEvent> events, std::span<float> out) override;

    bool hasFault() const override { return engine_.isSilencedByFault(); }

    std::uint64_t clips() const override { return clips_; }

    std::vector<std::string> clipNames() const override { return engine_.clipNames(); }

private:
    Engine engine_;
    std::uint64_t clips_ = 0;
};

} // namespace stopwright
