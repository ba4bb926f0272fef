// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

enum class OutletKind
{
    main,      ///< as it comes
    tremulant, ///< amplitude swings
    rotary     ///< a loudspeaker with a turning horn and a turning drum
};

/// A tremulant: gain 1 + depth sin (2 pi rateHz t), so depth 0.3 swings by 5.38 dB from peak to peak.
struct TremulantSettings
{
    double rateHz = 6.0;
    double depth = 0.3; ///< 0 .. 0.95

    bool operator== (const TremulantSettings&) const = default;
};

/// One rotor of a rotary speaker: speeds in turns per minute, radius of the moving source, and the time in which it
/// comes 90 % of the way from one speed to the other.
struct RotorSettings
{
    double slowRpm = 48.0;
    double fastRpm = 400.0;
    double radiusMetres = 0.15;
    double riseSeconds = 1.0;
    double fallSeconds = 1.5;

    bool operator== (const RotorSettings&) const = default;
};

/// A rotary speaker: treble from the horn, bass from the drum.
struct RotarySettings
{
    double crossoverHz = 800.0;
    RotorSettings horn;
    RotorSettings drum { 40.0, 342.0, 0.12, 4.0, 5.0 };

    bool operator== (const RotarySettings&) const = default;
};

/// Where the sound leaves the organ.
struct Outlet
{
    std::string name;
    OutletKind kind = OutletKind::main;
    TremulantSettings tremulant;
    RotarySettings rotary;
    bool isOn = true;            ///< tremulant: swings; rotary: at its fast speed
    bool swell = true;           ///< follows the swell shoe
    double swellFloorDb = -40.0; ///< with the shoe closed, re open; <= 0

    bool operator== (const Outlet&) const = default;
};

} // namespace stopwright
