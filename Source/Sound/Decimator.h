// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// From the internal rate down to the device's, once, on the mix: a linear-phase low-pass of which only every factor-th
/// output is worked out.
///
/// Flat within 0.001 dB up to 20 kHz, and what would fold into 0 .. 20 kHz is at least 130 dB down, at device rates of
/// 44.1 kHz and up; below that the edge lies at 0.4535 of the device rate. Factor 1 passes everything through untouched.
/// The output does not depend on how the stream is cut into blocks, to the last bit.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: Crochiere & Rabiner, Multirate Digital Signal Processing, polyphase decimators (from memory); KaiserLowpass
class Decimator
{
public:
    /// `maxDeviceFrames` is the most that one call of process may deliver. Units/range: factor >= 1.
    Decimator (double deviceRateHz, int factor, int maxDeviceFrames);

    /// Takes factor samples for each one it gives: in.size() == factor * out.size(), out.size() <= maxDeviceFrames.
    void process (std::span<const double> in, std::span<double> out) noexcept;

    void reset() noexcept;

    /// Goes on where a decimator of the same make stands.
    void copyStateFrom (const Decimator& other) noexcept;

    /// How late the output is: a whole number of device frames.
    int delayFrames() const noexcept { return delayFrames_; }

    int factor() const noexcept { return factor_; }

    /// Whether copyStateFrom may be called with it.
    bool isLike (const Decimator& other) const noexcept;

private:
    int factor_;
    int delayFrames_ = 0;
    std::size_t historyLength_ = 0;
    std::vector<double> coefficients_;
    std::vector<double> samples_; ///< what came before the block, then the block
};

} // namespace stopwright
