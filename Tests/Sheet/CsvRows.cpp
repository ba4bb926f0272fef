// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CsvRows.h"

#include <algorithm>
#include <stdexcept>

namespace stopwright::test
{

namespace
{

/// One cell from the front of `text`, which is taken off.
std::string takeCell (std::string_view& text)
{
    std::string cell;
    if (! text.starts_with ('"'))
    {
        const auto end = std::min (text.find_first_of (",\r\n\""), text.size());
        cell = text.substr (0, end);
        text.remove_prefix (end);
        return cell;
    }
    text.remove_prefix (1);
    while (true)
    {
        const auto quote = text.find ('"');
        if (quote == std::string_view::npos)
            throw std::runtime_error ("a quote does not close");
        cell += text.substr (0, quote);
        text.remove_prefix (quote + 1);
        if (! text.starts_with ('"'))
            return cell;
        cell += '"';
        text.remove_prefix (1);
    }
}

} // namespace

std::vector<std::vector<std::string>> csvRows (std::string_view text)
{
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> row;
    while (! text.empty())
    {
        row.push_back (takeCell (text));
        if (text.starts_with (','))
        {
            text.remove_prefix (1);
            continue;
        }
        if (! text.starts_with ("\r\n"))
            throw std::runtime_error ("a row does not end in CR LF");
        text.remove_prefix (2);
        if (! rows.empty() && row.size() != rows.front().size())
            throw std::runtime_error ("a row has another number of cells than the header");
        rows.push_back (std::move (row));
        row = {};
    }
    return rows;
}

double csvNumberAt (const std::vector<std::vector<std::string>>& rows, std::size_t row, const std::string& column)
{
    const auto place = std::ranges::find (rows.at (0), column);
    if (place == rows[0].end())
        throw std::runtime_error ("no column " + column);
    return std::stod (rows.at (row + 1).at (static_cast<std::size_t> (place - rows[0].begin())));
}

} // namespace stopwright::test
