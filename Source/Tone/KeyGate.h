// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Tone/GateShape.h"

#include <array>

namespace stopwright
{

/// The gate of one key: how far it is open, 0 shut .. 1 open, and the presses and releases that are still to come.
///
/// A move that is turned round half-way goes on from the level it has reached. Eight events can wait; should more come,
/// the last ones cancel in pairs, so that a gate can never stay open by mistake.
/// Threading: [audio] no allocation, no lock.
class KeyGate
{
public:
    struct Event
    {
        int frame = 0; ///< from the start of the block to come
        bool down = false;
    };

    /// Puts an event behind those waiting, never before them. One that changes nothing is dropped.
    void post (bool down, int frame) noexcept;

    bool hasEventBefore (int frame) const noexcept { return waiting_ > 0 && events_[0].frame < frame; }

    bool hasEvents() const noexcept { return waiting_ > 0; }

    Event takeEvent() noexcept;

    /// The block is over: what still waits is that much nearer.
    void moveEventsBy (int frames) noexcept;

    /// Sets out for open or shut. A contact is there at once.
    void begin (bool open, const GateShape& shape) noexcept;

    /// Openness at the next `count` frames (up to GateShape::chunkFrames).
    void run (const GateShape& shape, float* openness, int count) noexcept;

    bool isMoving() const noexcept { return moving_; }

    double openness() const noexcept { return openness_; }

    bool isAtRest() const noexcept { return ! moving_ && openness_ == 0.0 && waiting_ == 0; }

private:
    void runLine (const GateShape& shape, float* openness, int count) noexcept;
    void runRc (const GateShape& shape, float* openness, int count) noexcept;

    static constexpr int mostEvents = 8;

    std::array<Event, mostEvents> events_ {};
    int waiting_ = 0;
    bool down_ = false; ///< once all events have been taken
    bool moving_ = false;
    double openness_ = 0.0;
    double from_ = 0.0;
    double target_ = 0.0;
    double elapsedFrames_ = 0.0;
    double wholeFrames_ = 1.0;
};

} // namespace stopwright
