// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/JsonTree.h"

namespace stopwright
{

namespace
{

constexpr std::size_t columns = 120;

std::string scalarText (const JsonTree& value)
{
    return value.dump (-1, ' ', false, JsonTree::error_handler_t::replace);
}

/// "key": in front of a field, nothing in front of a list item.
std::string fieldPrefix (const JsonTree& parent, const std::string& key)
{
    return parent.is_object() ? scalarText (key) + ": " : std::string();
}

std::string onOneLine (const JsonTree& value)
{
    if (! value.is_structured())
        return scalarText (value);
    if (value.empty())
        return value.is_object() ? "{}" : "[]";

    std::string text = value.is_object() ? "{ " : "[";
    std::string separator;
    for (const auto& [key, item] : value.items())
    {
        text += separator + fieldPrefix (value, key) + onOneLine (item);
        separator = ", ";
    }
    return text + (value.is_object() ? " }" : "]");
}

void layOut (const JsonTree& value, std::size_t indent, std::size_t column, std::string& text)
{
    const auto line = onOneLine (value);
    const bool isWhole = indent == 0;
    if (! value.is_structured() || value.empty() || (! isWhole && column + line.size() < columns))
    {
        text += line;
        return;
    }

    const std::string margin (indent + 2, ' ');
    text += value.is_object() ? '{' : '[';
    std::string separator = "\n";
    for (const auto& [key, item] : value.items())
    {
        const auto prefix = fieldPrefix (value, key);
        text.append (separator).append (margin).append (prefix);
        layOut (item, indent + 2, indent + 2 + prefix.size(), text);
        separator = ",\n";
    }
    text.append (1, '\n').append (indent, ' ').append (value.is_object() ? "}" : "]");
}

} // namespace

std::string layOutJson (const JsonTree& tree)
{
    std::string text;
    layOut (tree, 0, 0, text);
    return text + "\n";
}

} // namespace stopwright
