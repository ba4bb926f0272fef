// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>

namespace stopwright
{

enum class KeyerShape
{
    linear, ///< straight-line rise and fall with rounded corners (raised cosine), at least 3 ms
    rc,     ///< exponential approach, attack and release are time constants
    contact ///< a hard contact: on and off at once
};

/// How a key lets its waves through. Defaults are common practice, no source.
///
/// Envelopes multiply a band-limited wave, so they must not be too fast themselves: a linear one takes at least 3 ms
/// however little it has to move, an rc one has a time constant of at least 0.1 ms, and shorter settings are taken as
/// those. A linear rise or fall lasts as long as given from one end to the other, in proportion from between.
struct KeyerSettings
{
    static constexpr double shortestLinearSeconds = 0.003;
    static constexpr double shortestRcSeconds = 0.0001;

    KeyerShape shape = KeyerShape::linear;
    double attackSeconds = 0.005;
    double releaseSeconds = 0.015;
    double bleedDb = -std::numeric_limits<double>::infinity(); ///< level of an unplayed key re a sounding one, <= 0

    /// Fails: Error on a time outside 0 .. 60 s or a bleed above 0 dB. Threading: [control].
    void check() const;

    bool operator== (const KeyerSettings&) const = default;
};

} // namespace stopwright
