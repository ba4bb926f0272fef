// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace stopwright
{

/// A table of comma-separated values, its first row the header. Rows end in CR LF; a text with a comma, quote or line
/// end is quoted. Numbers have 12 significant digits at most and a point whatever the locale; "-inf" for an absent level.
/// Threading: [control]. Source: RFC 4180.
class CsvText
{
public:
    CsvText (std::initializer_list<std::string_view> header);

    CsvText& cell (std::string_view text);
    CsvText& cell (double number);

    /// Ends the row.
    void end();

    const std::string& text() const noexcept { return text_; }

private:
    std::string text_;
    bool isRowBegun_ = false;
};

} // namespace stopwright
