// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UsualParts.h"

#include <array>

namespace stopwright
{

namespace
{

constexpr std::size_t kindCount = std::variant_size_v<PartValue>;

/// In the order of PartValue.
constexpr std::array<std::string_view, kindCount> letters { "R", "C", "L", "VR", "S", "U", "D", "Q", "Q", "V" };

Transistor silicon()
{
    Transistor transistor;
    transistor.saturationAmps = 10e-15;
    transistor.forwardBeta = 200.0;
    transistor.reverseBeta = 4.0;
    return transistor;
}

std::array<PartValue, kindCount> makeUsualParts()
{
    Inductor coil;
    coil.henries = 1.0;
    coil.windingOhms = 150.0;
    Potentiometer track;
    track.ohms = 10e3;
    Capacitor capacitor;
    capacitor.farads = 10e-9;
    return { Resistor { 10e3 },
             capacitor,
             coil,
             track,
             Switch(),
             OpAmp(),
             Diode { 2.5e-9, 1.75, 0.0 },
             Npn { silicon() },
             Pnp { silicon() },
             Supply { 12.0, 0.0 } };
}

} // namespace

std::span<const PartValue> usualParts()
{
    static const auto parts = makeUsualParts();
    return parts;
}

std::string_view partLetters (const PartValue& value) noexcept
{
    return letters[value.index()];
}

} // namespace stopwright
