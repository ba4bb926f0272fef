// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stopwright
{

/// Nodes in order: [a, b].
struct Resistor
{
    double ohms = 0.0;

    bool operator== (const Resistor&) const = default;
};

/// Nodes in order: [a, b]. `leakOhms` lies in parallel; infinity means no leak.
struct Capacitor
{
    double farads = 0.0;
    double leakOhms = std::numeric_limits<double>::infinity();

    bool operator== (const Capacitor&) const = default;
};

/// Nodes in order: [a, b]. `windingOhms` lies in series with the coil, `selfFarads` across both (0 means none).
struct Inductor
{
    double henries = 0.0;
    double windingOhms = 0.0;
    double selfFarads = 0.0;

    bool operator== (const Inductor&) const = default;
};

enum class Taper
{
    linear,
    log
};

/// Nodes in order: [top, wiper, bottom]. `position` is the turned angle 0..1 measured from the bottom end.
struct Potentiometer
{
    double ohms = 0.0;
    double position = 0.5;
    Taper taper = Taper::linear;

    bool operator== (const Potentiometer&) const = default;
};

/// Nodes in order: [a, b].
struct Switch
{
    bool closed = false;

    bool operator== (const Switch&) const = default;
};

/// Nodes in order: [plus, minus, out]. Without `gainBandwidthHz` the amplifier is ideal (infinite bandwidth; the gain
/// is infinite too unless `openLoopDb` limits it). With it, one pole: gain-bandwidth product and open-loop gain.
/// `rails` are the supply limits [low, high] in volts.
struct OpAmp
{
    std::optional<double> gainBandwidthHz;
    std::optional<double> openLoopDb;
    std::optional<std::array<double, 2>> rails;

    bool operator== (const OpAmp&) const = default;
};

/// Nodes in order: [anode, cathode]. The junction carries saturationAmps (e^(v / (emissionCoefficient Vt)) - 1), see
/// JunctionLaw; `seriesOhms` lies in series with it (0 means none).
struct Diode
{
    double saturationAmps = 0.0;
    double emissionCoefficient = 1.0;
    double seriesOhms = 0.0;

    bool operator== (const Diode&) const = default;
};

/// A bipolar transistor, nodes in order: [collector, base, emitter]. `leakageAmps` is what flows from collector to base
/// with the emitter open (0 means none); `earlyVolts` tilts the collector's characteristics (flat without it).
struct Transistor
{
    double saturationAmps = 0.0;
    double forwardBeta = 0.0;
    double reverseBeta = 1.0;
    double leakageAmps = 0.0;
    std::optional<double> earlyVolts;

    bool operator== (const Transistor&) const = default;
};

struct Npn : Transistor
{
    bool operator== (const Npn&) const = default;
};

struct Pnp : Transistor
{
    bool operator== (const Pnp&) const = default;
};

/// Nodes in order: [plus, minus]. `volts` of plus against minus, behind `seriesOhms` (0: an ideal supply).
struct Supply
{
    double volts = 0.0;
    double seriesOhms = 0.0;

    bool operator== (const Supply&) const = default;
};

using PartValue = std::variant<Resistor, Capacitor, Inductor, Potentiometer, Switch, OpAmp, Diode, Npn, Pnp, Supply>;

/// One part of a network: a name on the drawing, what it is, and the nodes its leads go to ("0" is circuit common).
/// Units: SI. `tolerance` is a fraction (0.05 = 5 %), 0 when not stated.
struct Part
{
    std::string name;
    std::vector<std::string> nodes;
    PartValue value;
    double tolerance = 0.0;

    bool operator== (const Part&) const = default;
};

/// The words that name a part's kind in sentences ("resistor", "op-amp", "npn transistor" ...).
std::string_view kindName (const PartValue& value) noexcept;

/// How many leads a part of this kind has, thus how many entries Part::nodes must have.
std::size_t leadCount (const PartValue& value) noexcept;

/// What a bipolar transistor of either polarity is made of; nothing for any other part.
const Transistor* transistorIn (const PartValue& value) noexcept;

} // namespace stopwright
