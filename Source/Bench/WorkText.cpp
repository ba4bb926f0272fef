// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WorkText.h"

#include "Organ/CardDocument.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

namespace
{

constexpr const char* origin = "the kept work";

juce::String wide (const std::string& text)
{
    return juce::String::fromUTF8 (text.c_str());
}

std::string narrow (const juce::var& value)
{
    return value.toString().toStdString();
}

juce::var trialVar (const std::string& name, const TrialPair& pair)
{
    auto* const object = new juce::DynamicObject;
    object->setProperty ("card", wide (name));
    object->setProperty ("a", wide (cardText (pair.a)));
    if (pair.b)
        object->setProperty ("b", wide (cardText (*pair.b)));
    object->setProperty ("isB", pair.isB);
    return { object };
}

TrialPair trialOf (const juce::var& value)
{
    TrialPair pair;
    pair.a = parseCard (narrow (value["a"]), origin);
    if (value.hasProperty ("b"))
        pair.b = parseCard (narrow (value["b"]), origin);
    pair.isB = pair.b && static_cast<bool> (value["isB"]);
    return pair;
}

} // namespace

std::string keptWorkText (const BenchDocument& document)
{
    auto* const object = new juce::DynamicObject;
    const juce::var whole (object);
    object->setProperty ("stopwright", 1);
    object->setProperty ("kind", "kept work");
    object->setProperty ("file",
                         wide ((document.instrument ? document.instrumentFile : document.looseCardFile).string()));
    if (document.instrument)
        object->setProperty ("instrument", wide (instrumentText (*document.instrument)));
    object->setProperty ("stop", document.stopIndex);
    juce::Array<juce::var> trials;
    for (const auto& [name, pair] : document.trials)
        trials.add (trialVar (name, pair));
    object->setProperty ("trials", trials);
    return juce::JSON::toString (whole).toStdString();
}

KeptWork parseKeptWork (const std::string& text)
{
    const auto whole = juce::JSON::parse (wide (text));
    if (whole["kind"].toString() != "kept work" || ! whole["trials"].isArray() || whole["trials"].size() == 0)
        throw Error (
            "What was kept of the last run cannot be read; it was put aside. Open the document as it was saved.");
    KeptWork kept;
    kept.file = narrow (whole["file"]);
    if (whole.hasProperty ("instrument"))
        kept.work.instrument = parseInstrument (narrow (whole["instrument"]), origin);
    kept.work.stopIndex = static_cast<int> (whole["stop"]);
    for (const auto& trial : *whole["trials"].getArray())
        kept.work.trials[narrow (trial["card"])] = trialOf (trial);
    if (! kept.work.trials.contains (kept.work.cardName()))
        throw Error ("What was kept of the last run lacks the card in hand; it was put aside. Open the document as it "
                     "was saved.");
    return kept;
}

} // namespace stopwright
