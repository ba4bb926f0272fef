// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgressLine.h"

#include <unistd.h>

#include <ostream>
#include <utility>

namespace stopwright
{

ProgressLine::ProgressLine (std::ostream& err, std::string what)
    : err_ (err),
      what_ (std::move (what)),
      isTerminal_ (::isatty (STDERR_FILENO) == 1)
{}

ProgressLine::~ProgressLine()
{
    constexpr int longestNumber = 8;
    if (percent_ >= 0)
        err_ << '\r' << std::string (what_.size() + longestNumber, ' ') << '\r' << std::flush;
}

void ProgressLine::show (double fraction)
{
    constexpr double hundred = 100.0;
    const int percent = static_cast<int> (fraction * hundred);
    if (! isTerminal_ || percent == percent_)
        return;
    percent_ = percent;
    err_ << '\r' << what_ << ' ' << percent << " %" << std::flush;
}

} // namespace stopwright
