// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/CsvTable.h"

#include <gtest/gtest.h>

#include <sstream>

namespace stopwright
{

namespace
{

std::vector<std::string> cellsOf (const std::string& line)
{
    std::vector<std::string> cells (1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i)
    {
        const bool isDoubled = quoted && line[i] == '"' && i + 1 < line.size() && line[i + 1] == '"';
        if (isDoubled)
            cells.back() += line[++i];
        else if (line[i] == '"')
            quoted = ! quoted;
        else if (line[i] == ',' && ! quoted)
            cells.emplace_back();
        else
            cells.back() += line[i];
    }
    return cells;
}

} // namespace

std::vector<std::map<std::string, std::string>> csvTable (const std::string& text)
{
    std::istringstream lines (text);
    std::string line;
    std::getline (lines, line);
    const auto names = cellsOf (line);
    std::vector<std::map<std::string, std::string>> rows;
    while (std::getline (lines, line))
    {
        const auto cells = cellsOf (line);
        EXPECT_EQ (cells.size(), names.size()) << line;
        rows.emplace_back();
        for (std::size_t i = 0; i < std::min (cells.size(), names.size()); ++i)
            rows.back()[names[i]] = cells[i];
    }
    return rows;
}

} // namespace stopwright
