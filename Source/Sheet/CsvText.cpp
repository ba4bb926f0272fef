// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CsvText.h"

#include "Units/CsvCell.h"

#include <array>
#include <charconv>
#include <cmath>

namespace stopwright
{

CsvText::CsvText (std::initializer_list<std::string_view> header)
{
    for (const auto name : header)
        cell (name);
    end();
}

CsvText& CsvText::cell (std::string_view text)
{
    if (isRowBegun_)
        text_ += ',';
    isRowBegun_ = true;
    text_ += csvCell (text);
    return *this;
}

CsvText& CsvText::cell (double number)
{
    constexpr int significantDigits = 12;
    if (std::isinf (number))
        return cell (number < 0.0 ? std::string_view ("-inf") : std::string_view ("inf"));
    std::array<char, 64> digits {};
    const auto end = std::to_chars (digits.data(), digits.data() + digits.size(), number, std::chars_format::general,
                                    significantDigits)
                         .ptr;
    return cell (std::string_view (digits.data(), static_cast<std::size_t> (end - digits.data())));
}

void CsvText::end()
{
    text_ += "\r\n";
    isRowBegun_ = false;
}

} // namespace stopwright
