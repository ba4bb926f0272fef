// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/CsvCell.h"

namespace stopwright
{

std::string csvCell (std::string_view text)
{
    if (text.find_first_of (",\"\r\n") == std::string_view::npos)
        return std::string (text);
    std::string cell = "\"";
    for (const char letter : text)
        cell.append (letter == '"' ? 2 : 1, letter);
    return cell + '"';
}

} // namespace stopwright
