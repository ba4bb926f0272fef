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
constexpr std::array<string_view, 14> tapFields { "name",    "wave",       "duty",  "ranks",   "weights",
                                                  "riseTau", "fallTau",    "tauIn", "weight",  "footage",
                                                  "vpp",     "sourceOhms", "node",  "polarity" };
constexpr std::array<string_view, 22> partFields { "name",       "kind",        "nodes",          "value",
                                                   "tolerance",  "leakOhms",    "windingOhms",    "selfFarads",
                                                   "position",   "taper",       "closed",         "gainBandwidthHz",
                                                   "openLoopDb", "rails",       "saturationAmps", "emissionCoefficient",
                                                   "seriesOhms", "forwardBeta", "reverseBeta",    "leakageAmps",
                                                   "earlyVolts", "volts" };
constexpr std::array<string_view, 12> instrumentFields { "stopwright",   "kind",      "name",
                                                         "note",         "tuning",    "highestGenerator",
                                                         "aboveHighest", "mutations", "keyer",
                                                         "divisions",    "buses",     "stops" };
constexpr std::array<string_view, 5> tuningFields { "kind", "referenceHz", "clockHz", "divisors", "octave" };
constexpr std::array<string_view, 4> keyerFields { "shape", "attackSeconds", "releaseSeconds", "bleedDb" };
constexpr std::array<string_view, 3> divisionFields { "name", "lowestKey", "highestKey" };
constexpr std::array<string_view, 12> busFields { "name",    "wave",  "duty",   "ranks",   "weights", "riseTau",
                                                  "fallTau", "tauIn", "weight", "footage", "vpp",     "sourceOhms" };
constexpr std::array<string_view, 4> stopFields { "tablet", "division", "card", "proposed" };

struct KindFields
{
    string_view kind;
    std::span<const string_view> fields;
};

constexpr std::array<KindFields, 9> allFields { { { "card", cardFields },
                                                  { "tap", tapFields },
                                                  { "part", partFields },
                                                  { "instrument", instrumentFields },
                                                  { "tuning", tuningFields },
                                                  { "keyer", keyerFields },
                                                  { "division", divisionFields },
                                                  { "bus", busFields },
                                                  { "stop", stopFields } } };

/// "part R1" for the key "part:R1"; nothing for the document itself.
std::string placeOf (const std::string& key)
{
    const auto colon = key.find (':');
    if (colon != std::string::npos)
        return key.substr (0, colon) + " " + partWords (key.substr (colon + 1));
    return key == "card" || key == "instrument" ? std::string() : key;
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
    const auto* const found =
        std::find_if (allFields.begin(), allFields.end(), [kind] (const KindFields& k) { return k.kind == kind; });
    return found == allFields.end() ? std::span<const string_view>() : found->fields;
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
