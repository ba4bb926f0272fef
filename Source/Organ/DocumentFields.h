// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/FieldReader.h"
#include "Organ/JsonTree.h"
#include "Organ/WaveSource.h"

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

// What the kinds of documents have in common. For the .cpp files of this folder only.

inline constexpr int documentVersion = 1;

/// "card", "instrument" or "mask", after the version has been checked. Fails: DocumentError.
/// Threading: [control], like all below.
std::string_view documentKindOf (FieldReader& document);

/// Refuses a document of another kind than wanted: what it is, what is wanted, and what to do.
void requireKind (FieldReader& document, std::string_view kind);

/// The same where a card will do as well as an instrument. Returns which of them it is.
std::string_view requireCardOrInstrument (FieldReader& document);

/// An empty document of a kind: version and kind.
JsonTree documentOf (std::string_view kind);

/// The fields that describe a wave, its footage and its level: of a tap or of a keyed bus.
WaveSource readWaveSource (FieldReader& fields);
void writeWaveSource (const WaveSource& source, JsonTree& tree);

/// The field polarity: 1 or -1, 1 when absent.
int readPolarity (FieldReader& fields);

/// The field `key`, the file of a card: a path that starts from the document's folder; empty when absent.
std::string readCardFile (FieldReader& fields, std::string_view key);

/// A value as a document spells it: "4k7", and 0 for none.
JsonTree quantityTree (double value, Quantity quantity);

/// A plain number: 2 and not 2.0 where it is whole.
JsonTree numberTree (double value);
JsonTree numbersTree (std::span<const double> values);

/// Where the unknown fields of an object are kept: "part:R1" for the first object of a name, "part:R1#2" for the second.
/// `uses` counts them; ask in the order of the document.
std::string unknownFieldPlace (std::string_view kind, const std::string& name, std::map<std::string, int>& uses);

/// Fields the program does not know, of one document: taken from readers under "kind:NAME" and put back under the same.
/// Several objects of one name are told apart by the order they stand in.
class UnknownFieldStore
{
public:
    explicit UnknownFieldStore (std::map<std::string, std::string>& fields) : fields_ (fields) {}

    void take (std::string_view kind, const std::string& name, const FieldReader& reader);

private:
    std::map<std::string, std::string>& fields_;
    std::map<std::string, int> uses_;
};

class UnknownFieldSource
{
public:
    explicit UnknownFieldSource (const std::map<std::string, std::string>& fields) : fields_ (fields) {}

    /// Adds what was kept for this object, except fields that stand in `tree` already.
    void putInto (JsonTree& tree, std::string_view kind, const std::string& name);

private:
    const std::map<std::string, std::string>& fields_;
    std::map<std::string, int> uses_;
};

} // namespace stopwright
