// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/PreampFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/DocumentLimits.h"
#include "Organ/ListFields.h"
#include "Organ/MixingBusFields.h"

#include <array>

namespace stopwright
{

namespace
{

/// In the order of StageKind.
constexpr std::array<std::string_view, 3> kindWords { "amplifier", "follower", "circuit" };

constexpr ValueRange gainRange { "gain", Quantity::number, -1e6, 1e6 };
constexpr ValueRange emitterAmpsRange { "standing current", Quantity::current, 1e-9, 100.0 };
constexpr ValueRange emitterOhmsRange { "emitter resistance", Quantity::resistance, 1e-3, 1e12 };
constexpr ValueRange loadRange { "load resistance", Quantity::resistance, 1e-3, 1e12 };
constexpr ValueRange inputRange { "input resistance", Quantity::resistance, 1e-3, 1e12 };

/// What a stage's unknown fields are kept under.
std::string placeOf (const Preamp& preamp, const PreampStage& stage)
{
    return preamp.name + "/" + stage.name;
}

Coupling readCoupling (FieldReader& stage, UnknownFieldStore& unknown, const std::string& place)
{
    Coupling coupling;
    auto fields = stage.object ("coupling");
    coupling.farads = fields.quantity ("farads", ValueLimits::capacitance, coupling.farads);
    coupling.inputOhms = fields.quantity ("inputOhms", inputRange, coupling.inputOhms);
    unknown.take ("coupling", place, fields);
    return coupling;
}

JsonTree couplingTree (const Coupling& coupling)
{
    return { { "farads", quantityTree (coupling.farads, Quantity::capacitance) },
             { "inputOhms", quantityTree (coupling.inputOhms, Quantity::resistance) } };
}

void readKind (FieldReader& fields, PreampStage& stage)
{
    switch (stage.kind)
    {
        case StageKind::amplifier:
            stage.gain = fields.quantity ("gain", gainRange, stage.gain);
            stage.gainBandwidthHz = readGainBandwidth (fields);
            stage.rails = readRails (fields);
            break;
        case StageKind::follower:
            stage.emitterAmps = fields.quantity ("emitterAmps", emitterAmpsRange, stage.emitterAmps);
            stage.emitterOhms = fields.quantity ("emitterOhms", emitterOhmsRange, stage.emitterOhms);
            stage.loadOhms = fields.quantity ("loadOhms", loadRange, stage.loadOhms);
            stage.rails = readRails (fields);
            break;
        case StageKind::circuit:
            stage.cardFile = readCardFile (fields, "card");
            if (stage.cardFile.empty())
                fields.refuse ("card", "a stage of kind circuit needs a card; name its file.");
            break;
    }
}

void writeKind (const PreampStage& stage, JsonTree& tree)
{
    switch (stage.kind)
    {
        case StageKind::amplifier:
            tree["gain"] = numberTree (stage.gain);
            writeGainBandwidth (stage.gainBandwidthHz, tree);
            writeRails (stage.rails, tree);
            break;
        case StageKind::follower:
            tree["emitterAmps"] = quantityTree (stage.emitterAmps, Quantity::current);
            tree["emitterOhms"] = quantityTree (stage.emitterOhms, Quantity::resistance);
            tree["loadOhms"] = quantityTree (stage.loadOhms, Quantity::resistance);
            writeRails (stage.rails, tree);
            break;
        case StageKind::circuit:
            tree["card"] = stage.cardFile;
            break;
    }
}

PreampStage readStage (FieldReader& fields, const Preamp& preamp, UnknownFieldStore& unknown)
{
    PreampStage stage;
    stage.name = fields.name ("name");
    fields.setLabel ("preamp " + partWords (preamp.name) + ", stage " + partWords (stage.name));
    requireFreshName (fields, "name", preamp.stages, stage.name);
    stage.kind = static_cast<StageKind> (fields.choice ("kind", kindWords));
    if (fields.has ("coupling"))
        stage.coupling = readCoupling (fields, unknown, placeOf (preamp, stage));
    readKind (fields, stage);
    unknown.take ("stage", placeOf (preamp, stage), fields);
    return stage;
}

JsonTree stageTree (const Preamp& preamp, const PreampStage& stage, UnknownFieldSource& unknown)
{
    const auto place = placeOf (preamp, stage);
    JsonTree tree;
    tree["name"] = stage.name;
    tree["kind"] = kindWords[static_cast<std::size_t> (stage.kind)];
    if (stage.coupling)
    {
        tree["coupling"] = couplingTree (*stage.coupling);
        unknown.putInto (tree["coupling"], "coupling", place);
    }
    writeKind (stage, tree);
    unknown.putInto (tree, "stage", place);
    return tree;
}

/// A bus has one output, so it feeds one preamp.
void requireFreeBus (const FieldReader& fields, const std::vector<Preamp>& earlier, const Preamp& preamp)
{
    const auto other =
        std::find_if (earlier.begin(), earlier.end(), [&preamp] (const Preamp& p) { return p.bus == preamp.bus; });
    if (other != earlier.end())
        fields.refuse ("bus", "the mixing bus " + partWords (preamp.bus) + " feeds preamp " + partWords (other->name)
                                  + " already; give each preamp a bus of its own.");
}

} // namespace

Preamp readPreamp (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown)
{
    Preamp preamp;
    preamp.name = fields.name ("name");
    fields.setLabel ("preamp " + partWords (preamp.name));
    requireFreshName (fields, "name", instrument.preamps, preamp.name);
    preamp.bus = fields.name ("bus");
    requireKnownName (fields, "bus", instrument.mixingBuses, preamp.bus, "mixing bus", "mixing buses");
    requireFreeBus (fields, instrument.preamps, preamp);
    preamp.outlet = fields.name ("outlet");
    requireKnownName (fields, "outlet", instrument.outlets, preamp.outlet, "outlet", "outlets");
    if (fields.has ("stages"))
        for (auto& stage : fields.objects ("stages", "stage", 0, DocumentLimits::stagesPerPreamp))
            preamp.stages.push_back (readStage (stage, preamp, unknown));
    return preamp;
}

JsonTree preampTree (const Preamp& preamp, UnknownFieldSource& unknown)
{
    JsonTree tree;
    tree["name"] = preamp.name;
    tree["bus"] = preamp.bus;
    tree["outlet"] = preamp.outlet;
    auto stages = JsonTree::array();
    for (const auto& stage : preamp.stages)
        stages.push_back (stageTree (preamp, stage, unknown));
    tree["stages"] = std::move (stages);
    return tree;
}

} // namespace stopwright
