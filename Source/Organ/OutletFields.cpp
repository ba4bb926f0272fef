// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/OutletFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/ListFields.h"
#include "Organ/PlainText.h"
#include "Organ/TremulantEdit.h"

#include <array>

namespace stopwright
{

namespace
{

/// In the order of OutletKind.
constexpr std::array<std::string_view, 3> kindWords { "main", "tremulant", "rotary" };

// Own choice, no source: slow enough for a rotor to be a body that turns.
constexpr ValueRange crossoverRange { "crossover", Quantity::frequency, 20.0, 20000.0 };
constexpr ValueRange slowRange { "slow speed in turns per minute", Quantity::number, 0.0, 3000.0 };
constexpr ValueRange fastRange { "fast speed in turns per minute", Quantity::number, 0.0, 3000.0 };
constexpr ValueRange radiusRange { "radius in metres", Quantity::number, 0.0, 1.0 };
constexpr ValueRange riseRange { "rise", Quantity::time, 0.01, 60.0 };
constexpr ValueRange fallRange { "fall", Quantity::time, 0.01, 60.0 };
constexpr ValueRange floorRange { "floor of the swell in dB", Quantity::number, -120.0, 0.0 };

TremulantSettings readTremulant (FieldReader& outlet, const std::string& name, UnknownFieldStore& unknown)
{
    TremulantSettings tremulant;
    if (! outlet.has ("tremulant"))
        return tremulant;
    auto fields = outlet.object ("tremulant");
    tremulant.rateHz = fields.quantity ("rateHz", TremulantLimits::rate, tremulant.rateHz);
    tremulant.depth = fields.quantity ("depth", TremulantLimits::depth, tremulant.depth);
    unknown.take ("tremulant", name, fields);
    return tremulant;
}

JsonTree tremulantTree (const TremulantSettings& tremulant)
{
    return { { "rateHz", numberTree (tremulant.rateHz) }, { "depth", numberTree (tremulant.depth) } };
}

/// `rotor` has what is usual, and `key` is also what its unknown fields are kept under.
void readRotor (FieldReader& rotary,
                std::string_view key,
                const std::string& outlet,
                UnknownFieldStore& unknown,
                RotorSettings& rotor)
{
    if (! rotary.has (key))
        return;
    auto fields = rotary.object (key);
    rotor.slowRpm = fields.quantity ("slowRpm", slowRange, rotor.slowRpm);
    rotor.fastRpm = fields.quantity ("fastRpm", fastRange, rotor.fastRpm);
    if (rotor.slowRpm > rotor.fastRpm)
        fields.refuse ({}, "the slow speed of the " + std::string (key) + " is " + numberText (rotor.slowRpm)
                               + " turns per minute, above its fast speed of " + numberText (rotor.fastRpm)
                               + "; exchange them.");
    rotor.radiusMetres = fields.quantity ("radiusMetres", radiusRange, rotor.radiusMetres);
    rotor.riseSeconds = fields.quantity ("riseSeconds", riseRange, rotor.riseSeconds);
    rotor.fallSeconds = fields.quantity ("fallSeconds", fallRange, rotor.fallSeconds);
    unknown.take (key, outlet, fields);
}

void writeRotor (const RotorSettings& rotor,
                 std::string_view key,
                 const std::string& outlet,
                 UnknownFieldSource& unknown,
                 JsonTree& rotary)
{
    JsonTree tree { { "slowRpm", numberTree (rotor.slowRpm) },
                    { "fastRpm", numberTree (rotor.fastRpm) },
                    { "radiusMetres", numberTree (rotor.radiusMetres) },
                    { "riseSeconds", numberTree (rotor.riseSeconds) },
                    { "fallSeconds", numberTree (rotor.fallSeconds) } };
    unknown.putInto (tree, key, outlet);
    rotary[std::string (key)] = std::move (tree);
}

RotarySettings readRotary (FieldReader& outlet, const std::string& name, UnknownFieldStore& unknown)
{
    RotarySettings rotary;
    if (! outlet.has ("rotary"))
        return rotary;
    auto fields = outlet.object ("rotary");
    rotary.crossoverHz = fields.quantity ("crossoverHz", crossoverRange, rotary.crossoverHz);
    readRotor (fields, "horn", name, unknown, rotary.horn);
    readRotor (fields, "drum", name, unknown, rotary.drum);
    unknown.take ("rotary", name, fields);
    return rotary;
}

JsonTree rotaryTree (const RotarySettings& rotary, const std::string& name, UnknownFieldSource& unknown)
{
    JsonTree tree;
    tree["crossoverHz"] = numberTree (rotary.crossoverHz);
    writeRotor (rotary.horn, "horn", name, unknown, tree);
    writeRotor (rotary.drum, "drum", name, unknown, tree);
    return tree;
}

} // namespace

Outlet readOutlet (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown)
{
    Outlet outlet;
    outlet.name = fields.name ("name");
    fields.setLabel ("outlet " + partWords (outlet.name));
    requireFreshName (fields, "name", instrument.outlets, outlet.name);
    outlet.kind = static_cast<OutletKind> (fields.choice ("kind", kindWords));
    if (outlet.kind == OutletKind::tremulant)
        outlet.tremulant = readTremulant (fields, outlet.name, unknown);
    if (outlet.kind == OutletKind::rotary)
        outlet.rotary = readRotary (fields, outlet.name, unknown);
    if (outlet.kind != OutletKind::main)
        outlet.isOn = fields.flag ("on", outlet.isOn);
    outlet.swell = fields.flag ("swell", outlet.swell);
    outlet.swellFloorDb = fields.quantity ("swellFloorDb", floorRange, outlet.swellFloorDb);
    return outlet;
}

JsonTree outletTree (const Outlet& outlet, UnknownFieldSource& unknown)
{
    JsonTree tree;
    tree["name"] = outlet.name;
    tree["kind"] = kindWords[static_cast<std::size_t> (outlet.kind)];
    if (outlet.kind == OutletKind::tremulant)
    {
        tree["tremulant"] = tremulantTree (outlet.tremulant);
        unknown.putInto (tree["tremulant"], "tremulant", outlet.name);
    }
    if (outlet.kind == OutletKind::rotary)
    {
        tree["rotary"] = rotaryTree (outlet.rotary, outlet.name, unknown);
        unknown.putInto (tree["rotary"], "rotary", outlet.name);
    }
    if (outlet.kind != OutletKind::main)
        tree["on"] = outlet.isOn;
    tree["swell"] = outlet.swell;
    tree["swellFloorDb"] = numberTree (outlet.swellFloorDb);
    return tree;
}

} // namespace stopwright
