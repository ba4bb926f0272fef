// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// What the sound device asks for. deviceRateHz 44100 .. 192000 in use, others down to 8000 work too.
struct StreamSpec
{
    /// Live sound: the bilinear step then bends 10 kHz down by at most 18 cents.
    static constexpr double liveInternalRateHz = 176400.0;

    /// Where numbers are taken: the bend is sixteen times less, 1.1 cents at 10 kHz.
    static constexpr double fineInternalRateHz = 705600.0;

    double deviceRateHz = 48000.0;
    int maxFrames = 512; ///< a bigger block than prepared is run in pieces
    double lowestInternalRateHz = liveInternalRateHz;
};

/// How many internal samples make one device sample: the smallest whole number that brings the internal rate to at
/// least lowestInternalRateHz. Threading: [any].
int internalFactor (const StreamSpec& spec) noexcept;

/// Fails: Error when the rate or the block size is none that can be played. Threading: [control].
void checkStream (const StreamSpec& spec);

} // namespace stopwright
