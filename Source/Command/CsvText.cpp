// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvText.h"

#include "Organ/PlainText.h"

namespace stopwright
{

std::string csvText (std::string_view text)
{
    std::string cell = "\"";
    for (const char letter : printable (text, text.size()))
        cell.append (letter == '"' ? 2 : 1, letter);
    return cell + '"';
}

} // namespace stopwright
