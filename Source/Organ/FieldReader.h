// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/ValueLimits.h"
#include "Organ/JsonTree.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// Reads the fields of one JSON object by name and remembers which were asked for: what is left over is unknown to the
/// program and kept. Each function refuses a field of the wrong type or out of range in one sentence with its path.
///
/// A fallback makes a field optional. Threading: [control]. Fails: DocumentError from every function that reads.
/// For the .cpp files of this folder only. The JSON tree must outlive the reader.
class FieldReader
{
public:
    /// `label` names the object in sentences ("part 'R1'"); empty for the document itself.
    FieldReader (const JsonTree& object, std::string origin, std::string path, std::string label);

    void setLabel (std::string label) { label_ = std::move (label); }

    bool has (std::string_view key) const;

    /// A name of 1 .. 64 characters with no control characters among them.
    std::string name (std::string_view key);

    /// Exactly `count` names, `what` saying in which order ("top, wiper, bottom").
    std::vector<std::string> names (std::string_view key, std::size_t count, std::string_view what);

    /// As many names as there are, each at most once.
    std::vector<std::string> distinctNames (std::string_view key, std::size_t atMost);

    /// Free text; empty when absent.
    std::string freeText (std::string_view key, std::size_t mostCharacters);

    /// Text that is to be read further, at most DocumentLimits::quantityCharacters of it.
    std::string shortText (std::string_view key, std::optional<std::string> fallback = {});

    /// Index of the word that stands there.
    std::size_t choice (std::string_view key,
                        std::span<const std::string_view> words,
                        std::optional<std::size_t> fallback = {});

    /// A number in SI units, or text in engineering notation unless the range is one of plain numbers.
    double quantity (std::string_view key, const ValueRange& range, std::optional<double> fallback = {});

    /// As quantity, for a list of atLeast .. atMost of them.
    std::vector<double>
        quantities (std::string_view key, const ValueRange& range, std::size_t atLeast, std::size_t atMost);

    int whole (std::string_view key, int lowest, int highest, std::optional<int> fallback = {});

    bool flag (std::string_view key, bool fallback);

    FieldReader object (std::string_view key);

    /// Readers of a list's objects, each labelled "`label` N" until it is given its name.
    std::vector<FieldReader>
        objects (std::string_view key, std::string_view label, std::size_t atLeast, std::size_t atMost);

    /// Text of a field that may be a string or a number ("footage": "2 2/3" or 8).
    std::string textOrNumber (std::string_view key, std::string fallback);

    /// The fields nobody asked for, as the text of a JSON object; empty when there are none.
    std::string unknownFields() const;

    /// Throws the DocumentError for a field (or, with an empty key, for the object).
    [[noreturn]] void refuse (std::string_view key, const std::string& sentence) const;

private:
    const JsonTree* find (std::string_view key);
    const JsonTree& require (std::string_view key);
    [[noreturn]] void refuseType (const std::string& key, std::string_view wanted, const JsonTree& found) const;
    std::string nameFrom (const JsonTree& value, const std::string& key) const;
    double quantityFrom (const JsonTree& value, const std::string& key, const ValueRange& range) const;
    const JsonTree& list (std::string_view key, std::size_t atLeast, std::size_t atMost);

    const JsonTree* object_;
    std::string origin_;
    std::string path_;
    std::string label_;
    std::vector<std::string> asked_;
};

} // namespace stopwright
