// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/FieldReader.h"

#include "Organ/DocumentError.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/Spelling.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

std::string describe (const JsonTree& value)
{
    if (value.is_null())
        return "null";
    if (value.is_boolean())
        return value.get<bool>() ? "true" : "false";
    if (value.is_number())
        return "the number " + numberText (value.get<double>());
    if (value.is_string())
        return "the text " + quotedText (value.get_ref<const std::string&>());
    return value.is_array() ? "a list" : "an object";
}

std::string withUnit (double value, Quantity quantity)
{
    return quantity == Quantity::number ? numberText (value) : formatForReading (value, quantity);
}

std::string rangeSentence (double value, const ValueRange& range)
{
    return "the " + std::string (range.what) + " is " + withUnit (value, range.quantity) + " but must be from "
           + withUnit (range.lowest, range.quantity) + " to " + withUnit (range.highest, range.quantity)
           + (range.zeroMeansNone ? ", or 0 for none." : ".");
}

std::string countSentence (std::size_t count, std::size_t atLeast, std::size_t atMost)
{
    const auto wanted =
        atLeast == atMost ? std::to_string (atLeast) : std::to_string (atLeast) + " to " + std::to_string (atMost);
    return "the list has " + std::to_string (count) + (count == 1 ? " entry" : " entries") + " but must have " + wanted
           + (count < atLeast ? "; add what it lacks." : "; leave some out.");
}

} // namespace

FieldReader::FieldReader (const JsonTree& object, std::string origin, std::string path, std::string label)
    : object_ (&object),
      origin_ (std::move (origin)),
      path_ (std::move (path)),
      label_ (std::move (label))
{
    if (! object.is_object())
        refuse ({}, "an object in braces is needed here, not " + describe (object) + ".");
}

void FieldReader::refuse (std::string_view key, const std::string& sentence) const
{
    const auto where = path_ + (key.empty() ? std::string() : "/" + std::string (key));
    throw DocumentError (origin_, where, (label_.empty() ? std::string() : label_ + ": ") + sentence);
}

void FieldReader::refuseType (const std::string& key, std::string_view wanted, const JsonTree& found) const
{
    const auto slash = key.find ('/');
    refuse (key, (slash == std::string::npos ? "'" : "each of '") + key.substr (0, slash) + "' must be "
                     + std::string (wanted) + ", not " + describe (found) + ".");
}

bool FieldReader::has (std::string_view key) const
{
    return object_->contains (key);
}

const JsonTree* FieldReader::find (std::string_view key)
{
    asked_.emplace_back (key);
    const auto found = object_->find (key);
    return found == object_->end() ? nullptr : &*found;
}

const JsonTree& FieldReader::require (std::string_view key)
{
    const auto* found = find (key);
    if (found == nullptr)
        refuse ({}, "the field '" + std::string (key) + "' is missing; add it.");
    return *found;
}

std::string FieldReader::nameFrom (const JsonTree& value, const std::string& key) const
{
    if (! value.is_string())
        refuseType (key, "a name in quotes", value);
    const auto& text = value.get_ref<const std::string&>();
    if (text.empty())
        refuse (key, "a name is empty; give it one.");
    if (characterCount (text) > DocumentLimits::nameCharacters)
        refuse (key, "the name " + quotedText (text) + " is longer than 64 characters; shorten it.");
    if (hasControlCharacter (text))
        refuse (key, "the name " + quotedText (text) + " has control characters in it; leave them out.");
    return text;
}

std::string FieldReader::name (std::string_view key)
{
    return nameFrom (require (key), std::string (key));
}

const JsonTree& FieldReader::list (std::string_view key, std::size_t atLeast, std::size_t atMost)
{
    const auto& value = require (key);
    if (! value.is_array())
        refuseType (std::string (key), "a list in brackets", value);
    if (value.size() < atLeast || value.size() > atMost)
        refuse (key, countSentence (value.size(), atLeast, atMost));
    return value;
}

std::vector<std::string> FieldReader::names (std::string_view key, std::size_t count, std::string_view what)
{
    const auto& value = require (key);
    if (! value.is_array() || value.size() != count)
        refuse (key, "'" + std::string (key) + "' must be a list of " + std::to_string (count)
                         + " nodes: " + std::string (what) + ".");
    std::vector<std::string> result;
    for (std::size_t i = 0; i < count; ++i)
        result.push_back (nameFrom (value[i], std::string (key) + "/" + std::to_string (i)));
    return result;
}

std::vector<std::string> FieldReader::distinctNames (std::string_view key, std::size_t atMost)
{
    std::vector<std::string> result;
    for (const auto& value : list (key, 0, atMost))
    {
        const auto place = std::string (key) + "/" + std::to_string (result.size());
        auto text = nameFrom (value, place);
        if (std::find (result.begin(), result.end(), text) != result.end())
            refuse (place, "the name " + quotedText (text) + " stands twice; leave one out.");
        result.push_back (std::move (text));
    }
    return result;
}

std::string FieldReader::freeText (std::string_view key, std::size_t mostCharacters)
{
    const auto* value = find (key);
    if (value == nullptr)
        return {};
    if (! value->is_string())
        refuseType (std::string (key), "text in quotes", *value);
    const auto& text = value->get_ref<const std::string&>();
    if (characterCount (text) > mostCharacters)
        refuse (key, "the text is longer than " + std::to_string (mostCharacters) + " characters; shorten it.");
    return text;
}

std::string FieldReader::shortText (std::string_view key, std::optional<std::string> fallback)
{
    if (fallback && ! has (key))
        return *fallback;
    const auto& value = require (key);
    if (! value.is_string())
        refuseType (std::string (key), "text in quotes", value);
    const auto& text = value.get_ref<const std::string&>();
    if (characterCount (text) > DocumentLimits::quantityCharacters)
        refuse (key, "the text " + quotedText (text) + " is too long here; shorten it.");
    return text;
}

std::size_t FieldReader::choice (std::string_view key,
                                 std::span<const std::string_view> words,
                                 std::optional<std::size_t> fallback)
{
    if (fallback && ! has (key))
        return *fallback;
    const auto& value = require (key);
    if (! value.is_string())
        refuseType (std::string (key), listedWords (words), value);

    const auto& text = value.get_ref<const std::string&>();
    if (const auto found = std::find (words.begin(), words.end(), text); found != words.end())
        return static_cast<std::size_t> (found - words.begin());
    const auto closest = closestWord (text, words);
    refuse (key, "'" + std::string (key) + "' must be " + listedWords (words) + ", not " + quotedText (text)
                     + (closest ? "; did you mean '" + std::string (*closest) + "'?" : "."));
}

double FieldReader::quantityFrom (const JsonTree& value, const std::string& key, const ValueRange& range) const
{
    const bool mayBeText = range.quantity != Quantity::number;
    if (! value.is_number() && ! (mayBeText && value.is_string()))
        refuseType (key, mayBeText ? "a number or text such as \"4k7\"" : "a number", value);

    double result = 0.0;
    if (value.is_number())
        result = value.get<double>();
    else
    {
        const auto& text = value.get_ref<const std::string&>();
        if (characterCount (text) > DocumentLimits::quantityCharacters)
            refuse (key, "the text " + quotedText (text) + " is no " + std::string (range.what)
                             + "; write one such as \"4k7\".");
        try
        {
            result = parseEngineering (text, range.quantity);
        }
        catch (const Error& fault)
        {
            refuse (key, "the " + std::string (range.what) + " cannot be read: " + fault.what());
        }
    }
    if (! std::isfinite (result) || ! range.contains (result))
        refuse (key, rangeSentence (result, range));
    return result;
}

double FieldReader::quantity (std::string_view key, const ValueRange& range, std::optional<double> fallback)
{
    if (fallback && ! has (key))
        return *fallback;
    return quantityFrom (require (key), std::string (key), range);
}

std::vector<double>
    FieldReader::quantities (std::string_view key, const ValueRange& range, std::size_t atLeast, std::size_t atMost)
{
    const auto& value = list (key, atLeast, atMost);
    std::vector<double> result;
    for (std::size_t i = 0; i < value.size(); ++i)
        result.push_back (quantityFrom (value[i], std::string (key) + "/" + std::to_string (i), range));
    return result;
}

int FieldReader::whole (std::string_view key, int lowest, int highest, std::optional<int> fallback)
{
    if (fallback && ! has (key))
        return *fallback;
    const auto& value = require (key);
    const auto wanted = "a whole number from " + std::to_string (lowest) + " to " + std::to_string (highest);
    if (! value.is_number())
        refuseType (std::string (key), wanted, value);
    const auto number = value.get<double>();
    if (number != std::floor (number) || number < lowest || number > highest)
        refuseType (std::string (key), wanted, value);
    return static_cast<int> (number);
}

bool FieldReader::flag (std::string_view key, bool fallback)
{
    const auto* value = find (key);
    if (value == nullptr)
        return fallback;
    if (! value->is_boolean())
        refuseType (std::string (key), "true or false", *value);
    return value->get<bool>();
}

FieldReader FieldReader::object (std::string_view key)
{
    return { require (key), origin_, path_ + "/" + std::string (key), label_ };
}

std::vector<FieldReader>
    FieldReader::objects (std::string_view key, std::string_view label, std::size_t atLeast, std::size_t atMost)
{
    const auto& value = list (key, atLeast, atMost);
    std::vector<FieldReader> result;
    for (std::size_t i = 0; i < value.size(); ++i)
        result.emplace_back (value[i], origin_, path_ + "/" + std::string (key) + "/" + std::to_string (i),
                             std::string (label) + " " + std::to_string (i + 1));
    return result;
}

std::string FieldReader::textOrNumber (std::string_view key, std::string fallback)
{
    if (has (key) && object_->find (key)->is_number())
        return numberText (require (key).get<double>());
    return shortText (key, std::move (fallback));
}

std::string FieldReader::unknownFields() const
{
    JsonTree unknown = JsonTree::object();
    for (const auto& [key, value] : object_->items())
        if (std::find (asked_.begin(), asked_.end(), key) == asked_.end())
            unknown[key] = value;
    return unknown.empty() ? std::string() : unknown.dump();
}

} // namespace stopwright
