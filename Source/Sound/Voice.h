// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <span>

namespace stopwright
{

/// What the audio thread plays from keys: one card, or a whole instrument. Volts out.
///
/// Everything that can be turned, drawn or switched while it sounds is a control: a number with an index, whose meaning
/// the voice's own lookups tell.
/// Threading: construct, destroy, prepareAdoption and look up on [control]; noexcept functions on [audio], no
/// allocation, no lock.
class Voice
{
public:
    /// A voice runs in pieces of at most so many device frames, whatever the device's block is.
    static constexpr int pieceFrames = 64;

    /// An output beyond this is a network running away, and taken for a fault.
    static constexpr double runawayVolts = 1e6;

    /// What one voice needs to know to go on where another is.
    class Adoption
    {
    public:
        Adoption() = default;
        virtual ~Adoption() = default;
        Adoption (const Adoption&) = delete;
        Adoption& operator= (const Adoption&) = delete;
        Adoption (Adoption&&) = delete;
        Adoption& operator= (Adoption&&) = delete;
    };

    Voice() = default;
    virtual ~Voice() = default;
    Voice (const Voice&) = delete;
    Voice& operator= (const Voice&) = delete;
    Voice (Voice&&) = delete;
    Voice& operator= (Voice&&) = delete;

    virtual int controlCount() const noexcept = 0;

    /// Sends a control to `value`, on a ramp where it would be heard. Unknown ones and values that are not finite are
    /// ignored. Threading: [audio].
    virtual void setControl (int index, double value) noexcept = 0;
    virtual bool controlsMove() const noexcept = 0;

    /// The keyboard a key on MIDI channel 1 .. 16 belongs to, or -1: none hears that channel.
    virtual int divisionOfChannel (int channel) const noexcept = 0;

    /// Of the coming piece. Repeats are harmless; divisions and keys that do not exist are ignored.
    virtual void key (int division, int key, bool down, int frameOffset) noexcept = 0;

    /// Writes volts.size() <= pieceFrames samples.
    virtual void renderPiece (std::span<double> volts) noexcept = 0;

    virtual void releaseAllKeys() noexcept = 0;
    virtual int soundingKeys() const noexcept = 0;

    /// The swell shoe: 0 closed .. 1 open. A voice without one ignores it.
    virtual void setSwell (double position) noexcept = 0;

    /// Which stages have clipped since the last call, a bit each.
    virtual std::uint64_t takeClips() noexcept = 0;

    /// Whether an output was not finite or beyond runawayVolts since construction.
    virtual bool hasFault() const noexcept = 0;

    /// From a key going down to its effect at the output: a whole number of device frames.
    virtual int delayFrames() const noexcept = 0;

    /// Internal samples since every square rose.
    virtual std::int64_t time() const noexcept = 0;

    /// How to go on where `other` is, as far as names agree; null when the two have nothing in common but time.
    virtual std::unique_ptr<Adoption> prepareAdoption (const Voice& other) const = 0;

    /// Takes over time, held keys and the charges of `other`; of one with a fault only time and keys. `how` is what
    /// prepareAdoption made of it, or null.
    virtual void adopt (const Voice& other, const Adoption* how) noexcept = 0;
};

} // namespace stopwright
