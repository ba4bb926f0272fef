// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/KeyEvent.h"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// What a phrase is rendered by, block by block. Threading: [control].
class RenderSource
{
public:
    static constexpr int blockFrames = 512;

    RenderSource() = default;
    virtual ~RenderSource() = default;
    RenderSource (const RenderSource&) = delete;
    RenderSource& operator= (const RenderSource&) = delete;
    RenderSource (RenderSource&&) = delete;
    RenderSource& operator= (RenderSource&&) = delete;

    /// What has to run before a phrase begins.
    virtual double leadInSeconds() const = 0;

    /// From a key going down to its effect at the output.
    virtual int delayFrames() const = 0;

    /// The swell shoe, 0 closed .. 1 open.
    virtual void setSwell (double position) = 0;

    /// Writes out.size() <= blockFrames samples.
    virtual void process (std::span<const KeyEvent> events, std::span<float> out) = 0;

    /// Whether the sound has run away since the beginning.
    virtual bool hasFault() const = 0;

    /// Which stages have clipped since the beginning: a bit for each of clipNames.
    virtual std::uint64_t clips() const = 0;
    virtual std::vector<std::string> clipNames() const = 0;
};

} // namespace stopwright
