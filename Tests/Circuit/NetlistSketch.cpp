// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetlistSketch.h"

namespace stopwright
{

std::string numbered (const std::string& letters, std::size_t number)
{
    return letters + std::to_string (number);
}

NetlistSketch& NetlistSketch::tap (const std::string& name, const std::string& node, double sourceOhms)
{
    netlist_.sources.push_back ({ name, node, sourceOhms });
    return *this;
}

NetlistSketch&
    NetlistSketch::part (const std::string& name, const std::vector<std::string>& nodes, const PartValue& value)
{
    netlist_.parts.push_back ({ name, nodes, value, 0.0 });
    return *this;
}

NetlistSketch&
    NetlistSketch::resistor (const std::string& name, const std::string& a, const std::string& b, double ohms)
{
    return part (name, { a, b }, Resistor { ohms });
}

NetlistSketch&
    NetlistSketch::capacitor (const std::string& name, const std::string& a, const std::string& b, double farads)
{
    Capacitor capacitor;
    capacitor.farads = farads;
    return part (name, { a, b }, capacitor);
}

NetlistSketch& NetlistSketch::inductor (const std::string& name,
                                        const std::string& a,
                                        const std::string& b,
                                        double henries,
                                        double windingOhms,
                                        double selfFarads)
{
    return part (name, { a, b }, Inductor { henries, windingOhms, selfFarads });
}

NetlistSketch& NetlistSketch::contact (const std::string& name, const std::string& a, const std::string& b, bool closed)
{
    return part (name, { a, b }, Switch { closed });
}

NetlistSketch& NetlistSketch::opAmp (const std::string& name,
                                     const std::string& plus,
                                     const std::string& minus,
                                     const std::string& out,
                                     const OpAmp& amplifier)
{
    return part (name, { plus, minus, out }, amplifier);
}

NetlistSketch& NetlistSketch::potentiometer (const std::string& name,
                                             const std::string& top,
                                             const std::string& wiper,
                                             const std::string& bottom,
                                             const Potentiometer& potentiometer)
{
    return part (name, { top, wiper, bottom }, potentiometer);
}

Netlist NetlistSketch::output (const std::string& node) const
{
    Netlist netlist = netlist_;
    netlist.output = node;
    return netlist;
}

} // namespace stopwright
