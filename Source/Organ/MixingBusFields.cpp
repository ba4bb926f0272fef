// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/MixingBusFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/ListFields.h"

#include <array>

namespace stopwright
{

namespace
{

/// In the order of BusKind.
constexpr std::array<std::string_view, 2> kindWords { "passive", "virtualEarth" };

constexpr ValueRange loadRange { "load resistance", Quantity::resistance, 1e-3, 1e12 };
constexpr ValueRange loomRange { "load capacitance", Quantity::capacitance, 1e-15, 1e-3, true };
constexpr ValueRange feedbackRange { "feedback resistance", Quantity::resistance, 1e-3, 1e12 };

} // namespace

std::optional<SupplyRails> readRails (FieldReader& fields)
{
    if (! fields.has ("rails"))
        return {};
    const auto rails = fields.quantities ("rails", ValueLimits::rail, 2, 2);
    if (rails[0] >= 0.0 || rails[1] <= 0.0)
        fields.refuse ("rails", "the rails are how far the output swings to either side of its resting point; write "
                                "[low, high] with low below 0 and high above it, such as [-6, 6].");
    return SupplyRails { rails[0], rails[1] };
}

void writeRails (const std::optional<SupplyRails>& rails, JsonTree& tree)
{
    if (rails)
        tree["rails"] = numbersTree (std::array<double, 2> { rails->low, rails->high });
}

std::optional<double> readGainBandwidth (FieldReader& fields)
{
    if (! fields.has ("gainBandwidthHz"))
        return {};
    return fields.quantity ("gainBandwidthHz", ValueLimits::gainBandwidth);
}

void writeGainBandwidth (const std::optional<double>& gainBandwidthHz, JsonTree& tree)
{
    if (gainBandwidthHz)
        tree["gainBandwidthHz"] = quantityTree (*gainBandwidthHz, Quantity::frequency);
}

MixingBus readMixingBus (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& /*unknown*/)
{
    MixingBus bus;
    bus.name = fields.name ("name");
    fields.setLabel ("mixing bus " + partWords (bus.name));
    requireFreshName (fields, "name", instrument.mixingBuses, bus.name);
    bus.kind = static_cast<BusKind> (fields.choice ("kind", kindWords));
    if (bus.kind == BusKind::passive)
    {
        bus.loadOhms = fields.quantity ("loadOhms", loadRange, bus.loadOhms);
        bus.loadFarads = fields.quantity ("loadFarads", loomRange, bus.loadFarads);
        return bus;
    }
    bus.feedbackOhms = fields.quantity ("feedbackOhms", feedbackRange, bus.feedbackOhms);
    bus.gainBandwidthHz = readGainBandwidth (fields);
    bus.rails = readRails (fields);
    return bus;
}

JsonTree mixingBusTree (const MixingBus& bus, UnknownFieldSource& /*unknown*/)
{
    JsonTree tree;
    tree["name"] = bus.name;
    tree["kind"] = kindWords[static_cast<std::size_t> (bus.kind)];
    if (bus.kind == BusKind::passive)
    {
        tree["loadOhms"] = quantityTree (bus.loadOhms, Quantity::resistance);
        if (bus.loadFarads != 0.0)
            tree["loadFarads"] = quantityTree (bus.loadFarads, Quantity::capacitance);
        return tree;
    }
    tree["feedbackOhms"] = quantityTree (bus.feedbackOhms, Quantity::resistance);
    writeGainBandwidth (bus.gainBandwidthHz, tree);
    writeRails (bus.rails, tree);
    return tree;
}

} // namespace stopwright
