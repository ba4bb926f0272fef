// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/TextTable.h"

#include <algorithm>
#include <cstddef>
#include <ostream>

namespace stopwright
{

namespace
{

/// Characters of UTF-8 text: all bytes that do not continue one.
std::size_t width (const std::string& text)
{
    return static_cast<std::size_t> (std::count_if (
        text.begin(), text.end(), [] (char byte) { return (static_cast<unsigned char> (byte) & 0xC0U) != 0x80U; }));
}

} // namespace

TextTable::TextTable (std::vector<std::string> headings)
{
    rows_.push_back (std::move (headings));
}

void TextTable::addRow (std::vector<std::string> cells)
{
    cells.resize (rows_.front().size());
    rows_.push_back (std::move (cells));
}

void TextTable::print (std::ostream& out) const
{
    std::vector<std::size_t> widths (rows_.front().size(), 0);
    for (const auto& row : rows_)
        for (std::size_t column = 0; column < row.size(); ++column)
            widths[column] = std::max (widths[column], width (row[column]));

    for (const auto& row : rows_)
    {
        for (std::size_t column = 0; column < row.size(); ++column)
            out << (column == 0 ? "" : "  ") << std::string (widths[column] - width (row[column]), ' ') << row[column];
        out << '\n';
    }
}

} // namespace stopwright
