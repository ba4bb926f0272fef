// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace stopwright
{

/// A table for the eye: a line of headings, columns flush right, two spaces apart. Threading: [control].
class TextTable
{
public:
    explicit TextTable (std::vector<std::string> headings);

    /// One cell per heading.
    void addRow (std::vector<std::string> cells);

    void print (std::ostream& out) const;

private:
    std::vector<std::vector<std::string>> rows_; ///< the headings first
};

} // namespace stopwright
