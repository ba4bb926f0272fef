// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

// The lists of named things an instrument is made of. For the .cpp files of this folder only. Threading: [control].

/// One of the lists: its field, what its unknown fields are kept under, what one of them is called, how many it may have.
struct ListField
{
    std::string_view key;
    std::string_view kind;
    std::string_view word;
    std::size_t atLeast = 0;
    std::size_t atMost = 0;
};

/// Reads a list, each thing after those before it, with what is unknown in it. Absent is empty, unless one is needed.
template <typename Item>
void readList (FieldReader& document,
               const ListField& field,
               const Instrument& instrument,
               UnknownFieldStore& unknown,
               std::vector<Item>& items,
               Item (*readItem) (FieldReader&, const Instrument&, UnknownFieldStore&))
{
    if (field.atLeast == 0 && ! document.has (field.key))
        return;
    for (auto& fields : document.objects (field.key, field.word, field.atLeast, field.atMost))
    {
        items.push_back (readItem (fields, instrument, unknown));
        unknown.take (field.kind, items.back().name, fields);
    }
}

template <typename Item>
JsonTree listTree (const ListField& field,
                   const std::vector<Item>& items,
                   UnknownFieldSource& unknown,
                   JsonTree (*itemTree) (const Item&, UnknownFieldSource&))
{
    auto list = JsonTree::array();
    for (const auto& item : items)
    {
        list.push_back (itemTree (item, unknown));
        unknown.putInto (list.back(), field.kind, item.name);
    }
    return list;
}

template <typename Item>
bool hasName (const std::vector<Item>& items, std::string_view name)
{
    return std::any_of (items.begin(), items.end(), [name] (const Item& item) { return item.name == name; });
}

[[noreturn]] void refuseSecond (const FieldReader& fields, std::string_view key, const std::string& name);

/// Refuses a name that an earlier one of the list has.
template <typename Item>
void requireFreshName (const FieldReader& fields,
                       std::string_view key,
                       const std::vector<Item>& earlier,
                       const std::string& name)
{
    if (hasName (earlier, name))
        refuseSecond (fields, key, name);
}

/// `word` is what is meant ("outlet"), `list` where they stand ("outlets").
[[noreturn]] void refuseStranger (const FieldReader& fields,
                                  std::string_view key,
                                  const std::string& name,
                                  const std::vector<std::string_view>& names,
                                  std::string_view word,
                                  std::string_view list);

/// Refuses the name of something the instrument does not have.
template <typename Item>
void requireKnownName (const FieldReader& fields,
                       std::string_view key,
                       const std::vector<Item>& items,
                       const std::string& name,
                       std::string_view word,
                       std::string_view list)
{
    if (hasName (items, name))
        return;
    std::vector<std::string_view> names;
    names.reserve (items.size());
    for (const auto& item : items)
        names.emplace_back (item.name);
    refuseStranger (fields, key, name, names, word, list);
}

} // namespace stopwright
