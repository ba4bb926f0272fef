// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/XmlCheck.h"

#include "Organ/PlainText.h"

#include <array>
#include <cctype>
#include <vector>

namespace stopwright::test
{

namespace
{

bool isNamePart (char letter)
{
    return std::isalnum (static_cast<unsigned char> (letter)) != 0 || letter == '-' || letter == '_' || letter == ':';
}

std::string faultOfText (std::string_view text)
{
    constexpr std::array<std::string_view, 5> entities { "&amp;", "&lt;", "&gt;", "&quot;", "&apos;" };
    for (auto place = text.find_first_of ("&<"); place != std::string_view::npos;
         place = text.find_first_of ("&<", place + 1))
    {
        bool isEntity = false;
        for (const auto entity : entities)
            isEntity = isEntity || text.substr (place).starts_with (entity);
        if (! isEntity)
            return "unescaped: " + std::string (text.substr (place, 20));
    }
    return {};
}

/// What stands between the name of a tag and its end: blanks and name="value" in turn.
std::string faultOfAttributes (std::string_view text)
{
    while (! text.empty())
    {
        if (text.front() != ' ')
            return "no blank before an attribute";
        text.remove_prefix (1);
        std::size_t name = 0;
        while (name < text.size() && isNamePart (text[name]))
            ++name;
        if (name == 0 || ! text.substr (name).starts_with ("=\""))
            return "no name=\"value\": " + std::string (text.substr (0, 20));
        const auto end = text.find ('"', name + 2);
        if (end == std::string_view::npos)
            return "a quote does not close";
        if (const auto fault = faultOfText (text.substr (name + 2, end - name - 2)); ! fault.empty())
            return fault;
        text.remove_prefix (end + 1);
    }
    return {};
}

/// One tag without its brackets, into or out of `open`.
std::string takeTag (std::string_view tag, std::vector<std::string>& open)
{
    const bool isEnd = tag.starts_with ('/');
    const bool isEmpty = tag.ends_with ('/');
    tag = tag.substr (isEnd ? 1 : 0, tag.size() - (isEnd ? 1 : 0) - (isEmpty ? 1 : 0));
    std::size_t length = 0;
    while (length < tag.size() && isNamePart (tag[length]))
        ++length;
    const std::string name (tag.substr (0, length));
    if (name.empty())
        return "a tag without a name";
    if (isEnd)
    {
        if (open.empty() || open.back() != name || length != tag.size())
            return "</" + name + "> closes nothing";
        open.pop_back();
        return {};
    }
    if (! isEmpty)
        open.push_back (name);
    return faultOfAttributes (tag.substr (length));
}

} // namespace

std::string xmlFault (std::string_view text)
{
    if (firstByteNotUtf8 (text) != std::string_view::npos)
        return "not UTF-8";
    for (const char letter : text)
        if (static_cast<unsigned char> (letter) < 0x20 && letter != '\n')
            return "control character";

    if (text.starts_with ("<?xml "))
        text.remove_prefix (text.find ("?>") + 2);
    std::vector<std::string> open;
    int roots = 0;
    for (auto start = text.find ('<'); start != std::string_view::npos; start = text.find ('<'))
    {
        const auto end = text.find ('>', start);
        if (end == std::string_view::npos)
            return "a tag does not end";
        if (const auto fault = faultOfText (text.substr (0, start)); ! fault.empty())
            return fault;
        roots += open.empty() ? 1 : 0;
        if (const auto fault = takeTag (text.substr (start + 1, end - start - 1), open); ! fault.empty())
            return fault;
        text.remove_prefix (end + 1);
    }
    if (! open.empty())
        return "<" + open.back() + "> is not closed";
    return roots == 1 ? faultOfText (text) : "there must be one root";
}

} // namespace stopwright::test
