// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UnknownFields.h"

#include "Circuit/FindingWords.h"
#include "Organ/JsonTree.h"
#include "Organ/Spelling.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

using std::string_view;

constexpr std::array<string_view, 7> cardFields { "stopwright", "kind", "name", "note", "taps", "parts", "output" };
constexpr std::array<string_view, 15> tapFields { "name",    "wave",       "duty",  "ranks",    "weights",
                                                  "riseTau", "fallTau",    "tauIn", "weight",   "footage",
                                                  "vpp",     "sourceOhms", "node",  "polarity", "asFound" };
constexpr std::array<string_view, 15> tapAsFoundFields { "wave",       "duty",  "ranks",    "weights", "riseTau",
                                                         "fallTau",    "tauIn", "weight",   "footage", "vpp",
                                                         "sourceOhms", "node",  "polarity", "date",    "why" };
constexpr std::array<string_view, 22> partFields { "name",       "kind",        "nodes",          "value",
                                                   "tolerance",  "leakOhms",    "windingOhms",    "selfFarads",
                                                   "position",   "taper",       "closed",         "gainBandwidthHz",
                                                   "openLoopDb", "rails",       "saturationAmps", "emissionCoefficient",
                                                   "seriesOhms", "forwardBeta", "reverseBeta",    "leakageAmps",
                                                   "earlyVolts", "volts" };
constexpr std::array<string_view, 17> instrumentFields {
    "stopwright",   "kind",      "name",    "note",     "tuning",    "highestGenerator",
    "aboveHighest", "mutations", "keyer",   "contacts", "divisions", "keyedBuses",
    "mixingBuses",  "preamps",   "outlets", "couplers", "stops"
};
constexpr std::array<string_view, 5> tuningFields { "kind", "referenceHz", "clockHz", "divisors", "octave" };
constexpr std::array<string_view, 4> keyerFields { "shape", "attackSeconds", "releaseSeconds", "bleedDb" };
constexpr std::array<string_view, 4> divisionFields { "name", "lowestKey", "highestKey", "midiChannel" };
constexpr std::array<string_view, 15> keyedBusFields { "name",    "wave",       "duty",          "ranks",    "weights",
                                                       "riseTau", "fallTau",    "tauIn",         "weight",   "footage",
                                                       "vpp",     "sourceOhms", "collectorOhms", "loadOhms", "keyer" };
constexpr std::array<string_view, 2> contactsFields { "order", "staggerSeconds" };
constexpr std::array<string_view, 7> mixingBusFields { "name",       "kind",         "loadOhms",
                                                       "loadFarads", "feedbackOhms", "gainBandwidthHz",
                                                       "rails" };
constexpr std::array<string_view, 4> preampFields { "name", "bus", "outlet", "stages" };
constexpr std::array<string_view, 10> stageFields {
    "name", "kind", "coupling", "gain", "gainBandwidthHz", "rails", "emitterAmps", "emitterOhms", "loadOhms", "card"
};
constexpr std::array<string_view, 2> couplingFields { "farads", "inputOhms" };
constexpr std::array<string_view, 7> outletFields {
    "name", "kind", "tremulant", "rotary", "on", "swell", "swellFloorDb"
};
constexpr std::array<string_view, 2> tremulantFields { "rateHz", "depth" };
constexpr std::array<string_view, 3> rotaryFields { "crossoverHz", "horn", "drum" };
constexpr std::array<string_view, 5> rotorFields { "slowRpm", "fastRpm", "radiusMetres", "riseSeconds", "fallSeconds" };
constexpr std::array<string_view, 5> couplerFields { "tablet", "from", "to", "octaves", "drawn" };
constexpr std::array<string_view, 10> stopFields { "tablet",     "division", "card",        "proposed", "bus",
                                                   "mixingOhms", "polarity", "whenRetired", "drawn",    "asFound" };
constexpr std::array<string_view, 8> stopAsFoundFields { "division", "card",        "bus",  "mixingOhms",
                                                         "polarity", "whenRetired", "date", "why" };

constexpr std::array<string_view, 12> maskFields { "stopwright", "kind",     "name",      "note",
                                                   "unison",     "levelsRe", "lowestKey", "highestKey",
                                                   "certainty",  "source",   "harmonics", "bands" };
constexpr std::array<string_view, 8> maskHarmonicFields { "harmonic",  "atMost",     "levelDb",   "toleranceDb",
                                                          "lowestKey", "highestKey", "certainty", "source" };
constexpr std::array<string_view, 9> maskBandFields { "name",      "centreHz",   "widthHz",   "levelDb", "toleranceDb",
                                                      "lowestKey", "highestKey", "certainty", "source" };

/// A kind of object: what its unknown fields are kept under, how a sentence calls one by name, its fields.
struct KindFields
{
    string_view kind;
    string_view word;
    std::span<const string_view> fields;
};

constexpr std::array<KindFields, 25> allFields { { { "card", "card", cardFields },
                                                   { "tap", "tap", tapFields },
                                                   { "tapAsFound", "as found of tap", tapAsFoundFields },
                                                   { "part", "part", partFields },
                                                   { "instrument", "instrument", instrumentFields },
                                                   { "tuning", "tuning", tuningFields },
                                                   { "keyer", "keyer of", keyerFields },
                                                   { "division", "division", divisionFields },
                                                   { "keyedBus", "keyed bus", keyedBusFields },
                                                   { "contacts", "contacts", contactsFields },
                                                   { "mixingBus", "mixing bus", mixingBusFields },
                                                   { "preamp", "preamp", preampFields },
                                                   { "stage", "stage", stageFields },
                                                   { "coupling", "coupling of", couplingFields },
                                                   { "outlet", "outlet", outletFields },
                                                   { "tremulant", "tremulant of", tremulantFields },
                                                   { "rotary", "rotary of", rotaryFields },
                                                   { "horn", "horn of", rotorFields },
                                                   { "drum", "drum of", rotorFields },
                                                   { "coupler", "coupler", couplerFields },
                                                   { "stop", "stop", stopFields },
                                                   { "stopAsFound", "as found of stop", stopAsFoundFields },
                                                   { "mask", "mask", maskFields },
                                                   { "harmonic", "harmonic", maskHarmonicFields },
                                                   { "band", "band", maskBandFields } } };

const KindFields* findKind (string_view kind) noexcept
{
    const auto* const found =
        std::find_if (allFields.begin(), allFields.end(), [kind] (const KindFields& k) { return k.kind == kind; });
    return found == allFields.end() ? nullptr : found;
}

/// "part R1" for the key "part:R1"; nothing for the document itself.
std::string placeOf (const std::string& key)
{
    const auto colon = key.find (':');
    if (colon == std::string::npos)
        return key == "card" || key == "instrument" || key == "mask" ? std::string() : key;
    const auto kind = key.substr (0, colon);
    const auto* const found = findKind (kind);
    return (found == nullptr ? kind : std::string (found->word)) + " " + partWords (key.substr (colon + 1));
}

std::string sentenceFor (const std::string& place, const std::string& field, std::span<const string_view> known)
{
    const auto start = (place.empty() ? "the field " : place + ": the field ") + quotedText (field);
    if (std::find (known.begin(), known.end(), field) != known.end())
        return start + " has no meaning here; it is kept as it is.";
    if (const auto closest = closestWord (field, known))
        return start + " is unknown; did you mean \"" + std::string (*closest) + "\"?";
    return start + " is unknown; it is kept as it is.";
}

} // namespace

std::span<const string_view> knownFields (string_view kind) noexcept
{
    const auto* const found = findKind (kind);
    return found == nullptr ? std::span<const string_view>() : found->fields;
}

std::vector<UnknownField> listUnknownFields (const std::map<std::string, std::string>& unknownFields)
{
    std::vector<UnknownField> list;
    for (const auto& [key, text] : unknownFields)
    {
        const auto place = placeOf (key);
        const auto known = knownFields (key.substr (0, key.find (':')));
        const auto fields = parseJson (text, "kept fields of " + key);
        for (const auto& [field, value] : fields.items())
            list.push_back ({ place, field, sentenceFor (place, field, known) });
    }
    return list;
}

} // namespace stopwright
