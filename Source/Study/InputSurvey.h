// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HeadroomStudy.h"
#include "Study/InputStress.h"

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// What one input pin of the instrument's active stages gets while the drawn stops and the keys sound.
struct InputReading
{
    std::string name;   ///< of the virtual earth, or of the stage
    std::string preamp; ///< empty for a virtual earth
    InputDrive on;      ///< with the supplies on
    SupplyRails rails = noLimits;
    std::optional<InputDrive> off; ///< with them off; only inputs that sources with other supplies reach
    InputStress stress;
};

/// Every virtual earth and every amplifier or follower behind the buses that drawn stops are on.
///
/// An input with feedback around it (a virtual earth, an amplifier of negative gain) stays at 0 V until its output stands
/// at a rail; then what is too much flows through the sources and the feedback resistor in parallel. Others get the volts
/// of what is before them, which reaches no further than its own rails and has no source resistance unless it is a
/// passive bus. With the supplies off, only the first input behind the stops is driven. Impedances are those at 1 kHz.
/// Rails are those of the outputs: supplies reach a volt or two further, so currents are told high. Inputs of circuit
/// stages, and of inverting ones that state no input resistance, are left out.
/// `each` gives diode and limit, its rails are not used; `seriesOhms` is in front of every pin.
/// Threading: [control]. Fails: Error as headroomOf.
std::vector<InputReading> inputSurvey (const Instrument& instrument,
                                       const InstrumentCards& cards,
                                       const std::vector<HeldKey>& held,
                                       const InputLimits& each,
                                       double seriesOhms);

} // namespace stopwright
