// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/KeyedBusFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentLimits.h"
#include "Organ/ListFields.h"
#include "Organ/TuningFields.h"

namespace stopwright
{

namespace
{

constexpr ValueRange collectorRange { "collector resistance", Quantity::resistance, 1e-3, 1e12 };
constexpr ValueRange loadRange { "load resistance", Quantity::resistance, 1e-3, 1e12 };
constexpr ValueRange staggerRange { "stagger", Quantity::time, 0.0, 0.05 };

} // namespace

KeyedBus readKeyedBus (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown)
{
    KeyedBus bus;
    bus.name = fields.name ("name");
    fields.setLabel ("keyed bus " + partWords (bus.name));
    requireFreshName (fields, "name", instrument.keyedBuses, bus.name);
    const auto source = readWaveSource (fields);
    bus.footage = source.footage;
    bus.wave = source.wave;
    bus.voltsPeakToPeak = source.voltsPeakToPeak;
    bus.sourceOhms = source.sourceOhms;
    if (fields.has ("collectorOhms"))
    {
        bus.collectorOhms = fields.quantity ("collectorOhms", collectorRange);
        bus.loadOhms = fields.quantity ("loadOhms", loadRange, bus.loadOhms);
    }
    if (fields.has ("keyer"))
        bus.keyer = readKeyer (fields, unknown, bus.name);
    return bus;
}

JsonTree keyedBusTree (const KeyedBus& bus, UnknownFieldSource& unknown)
{
    JsonTree tree;
    tree["name"] = bus.name;
    writeWaveSource (waveSourceOf (bus), tree);
    if (bus.collectorOhms)
    {
        tree["collectorOhms"] = quantityTree (*bus.collectorOhms, Quantity::resistance);
        tree["loadOhms"] = quantityTree (bus.loadOhms, Quantity::resistance);
    }
    if (bus.keyer)
        writeKeyer (*bus.keyer, tree, unknown, bus.name);
    return tree;
}

KeyContacts readContacts (FieldReader& document, const Instrument& instrument, UnknownFieldStore& unknown)
{
    KeyContacts contacts;
    if (! document.has ("contacts"))
        return contacts;
    auto fields = document.object ("contacts");
    fields.setLabel ("contacts");
    if (fields.has ("order"))
        contacts.order = fields.distinctNames ("order", DocumentLimits::keyedBuses);
    for (std::size_t i = 0; i < contacts.order.size(); ++i)
        requireKnownName (fields, "order/" + std::to_string (i), instrument.keyedBuses, contacts.order[i], "keyed bus",
                          "keyed buses");
    contacts.staggerSeconds = fields.quantity ("staggerSeconds", staggerRange, contacts.staggerSeconds);
    unknown.take ("contacts", {}, fields);
    return contacts;
}

void writeContacts (const Instrument& instrument, JsonTree& document, UnknownFieldSource& unknown)
{
    auto contacts = JsonTree::object();
    if (! instrument.contacts.order.empty())
        contacts["order"] = instrument.contacts.order;
    if (instrument.contacts.staggerSeconds != 0.0)
        contacts["staggerSeconds"] = numberTree (instrument.contacts.staggerSeconds);
    unknown.putInto (contacts, "contacts", {});
    if (! contacts.empty())
        document["contacts"] = std::move (contacts);
}

} // namespace stopwright
