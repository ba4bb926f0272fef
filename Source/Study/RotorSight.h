// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

namespace stopwright
{

/// Where a rotor is heard from, and how much it beams.
struct RotorPlace
{
    double microphoneMetres = 1.0; ///< from the axis, in the plane of the rotor
    double directivity = 0.0;      ///< amplitude lost behind the mouth: 0 sends alike all round, 1 nothing to the rear
};

/// The horn and the drum of a rotary speaker: the horn loses 12 dB behind its mouth and the drum 4.4 dB (amplitude 0.75 and
/// 0.4; common practice, no source).
inline constexpr RotorPlace rotaryHornPlace { .microphoneMetres = 1.0, .directivity = 0.75 };
inline constexpr RotorPlace rotaryDrumPlace { .microphoneMetres = 1.0, .directivity = 0.4 };

/// A rotor's mouth as the microphone sees it at one angle, 0 towards it.
///
/// With radius r, microphone at d and angle a the way is D (a) = sqrt (d^2 + r^2 - 2 d r cos a), and the amplitude
/// (d / D) (1 - directivity (1 - cos b) / 2), b the angle between mouth and the way to the microphone,
/// cos b = (d cos a - r) / D. Threading: [any]. Source: the cosine law is common practice, no source.
struct RotorSight
{
    static constexpr double soundMetresPerSecond = 343.0;

    double metres;
    double metresPerRadian;
    double gain;

    static RotorSight at (double radians, double radiusMetres, const RotorPlace& place) noexcept
    {
        const double d = place.microphoneMetres;
        const double cosine = std::cos (radians);
        const double metres = std::sqrt (d * d + radiusMetres * (radiusMetres - 2.0 * d * cosine));
        const double mouth = (d * cosine - radiusMetres) / metres;
        return { metres, d * radiusMetres * std::sin (radians) / metres,
                 d / metres * (1.0 - 0.5 * place.directivity * (1.0 - mouth)) };
    }
};

} // namespace stopwright
