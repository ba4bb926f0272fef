// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stopwright
{

/// "R" and 3 give "R3".
std::string numbered (const std::string& letters, std::size_t number);

/// Writes a netlist for a test in few words, one call a part.
class NetlistSketch
{
public:
    NetlistSketch& tap (const std::string& name, const std::string& node, double sourceOhms = 0.0);
    NetlistSketch& resistor (const std::string& name, const std::string& a, const std::string& b, double ohms);
    NetlistSketch& capacitor (const std::string& name, const std::string& a, const std::string& b, double farads);
    NetlistSketch& inductor (const std::string& name,
                             const std::string& a,
                             const std::string& b,
                             double henries,
                             double windingOhms = 0.0,
                             double selfFarads = 0.0);
    NetlistSketch& contact (const std::string& name, const std::string& a, const std::string& b, bool closed);
    NetlistSketch& opAmp (const std::string& name,
                          const std::string& plus,
                          const std::string& minus,
                          const std::string& out,
                          const OpAmp& amplifier = {});
    NetlistSketch& potentiometer (const std::string& name,
                                  const std::string& top,
                                  const std::string& wiper,
                                  const std::string& bottom,
                                  const Potentiometer& potentiometer);
    NetlistSketch& part (const std::string& name, const std::vector<std::string>& nodes, const PartValue& value);

    /// Names the output and hands the netlist over.
    Netlist output (const std::string& node) const;

private:
    Netlist netlist_;
};

} // namespace stopwright
