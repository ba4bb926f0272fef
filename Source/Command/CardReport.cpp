// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CardReport.h"

#include "Circuit/Junction.h"
#include "Circuit/NetlistCheck.h"
#include "Circuit/NodeMap.h"
#include "Circuit/OperatingPoint.h"
#include "Circuit/StateSpaceBuilder.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/UnknownFields.h"
#include "Organ/WaveWords.h"
#include "Units/Engineering.h"

#include <array>
#include <sstream>

namespace stopwright
{

namespace
{

std::string partCounts (const std::vector<Part>& parts)
{
    std::array<std::size_t, std::variant_size_v<PartValue>> counts {};
    std::array<std::string, std::variant_size_v<PartValue>> names;
    for (const auto& part : parts)
    {
        ++counts[part.value.index()];
        names[part.value.index()] = kindName (part.value);
    }

    std::string words;
    for (std::size_t kind = 0; kind < counts.size(); ++kind)
        if (counts[kind] != 0)
            words += (words.empty() ? "" : ", ") + counted (counts[kind], names[kind]);
    return words.empty() ? "none" : words;
}

void describeDevice (const OperatingPoint::Device& device, const PartValue& value, std::ostream& text)
{
    const auto amps = [&] (std::size_t lead) { return formatForReading (device.leadAmps[lead], Quantity::current); };
    text << "  rest    " << device.part << ' ' << regionWords (device.region) << ": ";
    if (transistorIn (value) != nullptr)
        text << amps (0) << " into its collector, " << amps (1) << " into its base\n";
    else if (std::holds_alternative<Diode> (value))
        text << amps (0) << '\n';
    else
        text << formatForReading (-device.leadAmps[0], Quantity::current) << '\n';
}

/// Where it rests with every key up: node by node, then what the devices carry.
void describeRest (const Netlist& netlist, std::ostream& text)
{
    const auto point = findOperatingPoint (netlist);
    for (const auto& [node, volts] : point.nodeVolts)
        text << "  rest    node " << node << ": " << formatForReading (volts, Quantity::voltage) << '\n';
    auto device = point.devices.begin();
    for (const auto& part : netlist.parts)
        if (device != point.devices.end() && part.name == device->part)
            describeDevice (*device++, part.value, text);
}

std::string describe (const Card& card, const Netlist& netlist, const std::filesystem::path& file)
{
    const StateSpaceBuilder builder (netlist, { card.output });
    std::ostringstream text;
    text << file.string() << ": stop card \"" << printable (card.name, DocumentLimits::titleCharacters)
         << "\", sound\n";
    for (const auto& tap : card.taps)
        text << "  tap     " << tap.name << " at node " << tap.node << ": " << waveWords (waveSourceOf (tap))
             << (tap.polarity < 0 ? ", polarity reversed" : "") << '\n';
    text << "  parts   " << card.parts.size() << ": " << partCounts (card.parts) << '\n'
         << "  nodes   " << NodeMap (netlist).count() << " besides common\n"
         << "  states  " << builder.stateCount() << '\n'
         << "  output  node " << card.output << '\n';
    if (hasDevices (netlist))
        describeRest (netlist, text);
    return text.str();
}

} // namespace

std::string counted (std::size_t count, const std::string& what)
{
    const bool hisses = what.ends_with ("ch");   // a switch
    const bool endsInY = what.ends_with ("ply"); // a supply
    if (count == 1)
        return "1 " + what;
    return std::to_string (count) + " "
           + (endsInY ? what.substr (0, what.size() - 1) + "ies" : what + (hisses ? "es" : "s"));
}

DocumentReport reportOf (const Card& card, const std::filesystem::path& file)
{
    DocumentReport report;
    const auto netlist = netlistOf (card);
    const auto prefix = file.string() + ": ";
    for (const auto& finding : findFaults (netlist))
        (finding.severity == Severity::error ? report.errors : report.warnings).push_back (prefix + finding.sentence);
    for (const auto& field : listUnknownFields (card.unknownFields))
        report.warnings.push_back (prefix + field.sentence);
    if (report.errors.empty())
        report.description = describe (card, netlist, file);
    return report;
}

} // namespace stopwright
