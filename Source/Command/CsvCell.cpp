// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvCell.h"

#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"

namespace stopwright
{

std::string csvCell (std::string_view text)
{
    std::string cell = "\"";
    for (const char letter : printable (text, DocumentLimits::titleCharacters))
        cell.append (letter == '"' ? 2 : 1, letter);
    return cell.append (1, '"');
}

} // namespace stopwright
