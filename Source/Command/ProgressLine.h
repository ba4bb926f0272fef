// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iosfwd>
#include <string>

namespace stopwright
{

/// How far long work has come, on one line that is written over; nothing at all unless standard error is a terminal.
/// Threading: [control].
class ProgressLine
{
public:
    ProgressLine (std::ostream& err, std::string what);

    /// Wipes the line.
    ~ProgressLine();

    ProgressLine (const ProgressLine&) = delete;
    ProgressLine& operator= (const ProgressLine&) = delete;
    ProgressLine (ProgressLine&&) = delete;
    ProgressLine& operator= (ProgressLine&&) = delete;

    /// fraction: 0 .. 1.
    void show (double fraction);

private:
    std::ostream& err_;
    std::string what_;
    bool isTerminal_ = false;
    int percent_ = -1;
};

} // namespace stopwright
