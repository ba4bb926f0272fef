// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace stopwright
{

/// Which number of a part or source a knob turns.
enum class KnobKind
{
    value,       ///< ohms, farads, henries; a potentiometer's whole track
    position,    ///< potentiometer, 0..1
    leakOhms,    ///< capacitor
    windingOhms, ///< inductor
    selfFarads,  ///< inductor
    gainBandwidthHz,
    seriesOhms, ///< diode, supply
    sourceOhms  ///< of a source port
};

/// Names one turnable number of a network: a part (or source port, for sourceOhms) and which of its numbers.
struct PartKnob
{
    std::string part;
    KnobKind kind = KnobKind::value;
};

} // namespace stopwright
