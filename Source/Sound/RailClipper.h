// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/SupplyRails.h"
#include "Sound/RailKernel.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// What supply rails do to a voltage: y = min (high, max (low, x)), without aliases.
///
/// A corner's harmonics fall by 12 dB per octave only, so that cut at the samples they fold back into hearing. Here the
/// wave between samples is worked out at eight points each and taken as straight from one to the next; what it exceeds a
/// rail by is averaged over each such length in closed form, (b^2 / 2) / (b - a) where it crosses from a < 0 to b > 0
/// (first-order antiderivative antialiasing at eight times the rate, in a form without a difference of close numbers, so
/// equal neighbours need no case of their own), and brought down again by a linear-phase low-pass. A wave that does not
/// reach the rails between the samples either passes the same filters only: flat to 20 kHz within 1e-4 dB, 12 dB down
/// half way from there to 0.6 of the rate.
/// A 1 kHz sine driven 10 dB into +-rails at 192 kHz: worst alias in 20 Hz .. 20 kHz -157 dB re the fundamental, where
/// cutting at the samples leaves -81 dB; at 4 kHz -135 and -56 dB. A band-limited wave overshoots: the output passes the
/// rails by up to 2 % beside the corners of a 4 kHz sine, by 14 % beside edges that leap from rail to rail.
///
/// The lamp is judged before the rails, on the mean of five samples weighted 1 4 6 4 1, and lights 0.5 % (0.04 dB) beyond
/// a rail: so such ringing of a stage before, which no circuit has, lights nothing. At 10 kHz the mean reads 0.5 dB low.
///
/// The output does not depend on how the stream is cut into blocks, to the last bit.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
/// Source: Parker, Zavalishin & Le Bivic, Reducing the aliasing of nonlinear waveshaping using continuous-time
/// convolution, DAFx-16 (2016); Bilbao, Esqueda, Parker & Valimaki, Antiderivative antialiasing for memoryless
/// nonlinearities, IEEE Signal Processing Letters 24 (2017) 1049 (both from memory)
class RailClipper
{
public:
    static constexpr double lampTolerance = 0.005;

    /// `rails` in volts, low < 0 < high; one of them may be infinite. Units/range: rateHz >= 100 kHz.
    RailClipper (SupplyRails rails, double rateHz);

    /// In place, any length. A sample beyond a million times the lesser rail counts as that.
    void process (std::span<double> volts) noexcept;

    /// How late the output is: a whole number of samples.
    int delaySamples() const noexcept { return 2 * kernel_.reach; }

    /// Whether the lamp has been lit since the last clearLamp.
    bool hasClipped() const noexcept { return hasClipped_; }

    void clearLamp() noexcept { hasClipped_ = false; }

    /// As after construction, lamp out.
    void reset() noexcept;

    /// Goes on where a clipper for the same rate stands; the rails may differ.
    void copyStateFrom (const RailClipper& other) noexcept;

private:
    static constexpr std::size_t pieceSamples = 64;

    void processPiece (std::span<double> volts) noexcept;
    void clipPiece (std::span<double> volts) noexcept;
    void makeExcess (std::size_t sample) noexcept;
    void watchLamp (std::size_t newest) noexcept;

    RailKernel kernel_;
    SupplyRails rails_;
    double largest_;                ///< of any input
    double harmless_;               ///< samples within +- this have no point beyond a rail
    std::size_t history_;           ///< samples kept from before a piece
    std::size_t rowsKept_;          ///< rows of excess kept from before a piece
    int wakeFor_;                   ///< samples from one that is not harmless to the last output that may show it
    int wake_ = 0;                  ///< how many of them are left; excess_ is all zero when none
    bool hasLastPoint_ = false;     ///< lastPoint_ is of the row before
    double lastPoint_ = 0.0;        ///< the last point of a row
    std::vector<double> samples_;   ///< what came before the piece, then the piece
    std::vector<double> excess_;    ///< rows of RailKernel::points means beyond the rails
    std::vector<double> unclipped_; ///< of the piece
    bool hasClipped_ = false;
};

} // namespace stopwright
