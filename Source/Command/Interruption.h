// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// While one of these lives, a wish to stop the program (interrupt, terminate, hang-up) is noted instead of obeyed, so
/// that long work can clean up behind itself; and a file that grows past the limit of the shell is an error of writing
/// instead of a sudden end. Threading: [control], one at a time.
class Interruption
{
public:
    Interruption();
    ~Interruption();
    Interruption (const Interruption&) = delete;
    Interruption& operator= (const Interruption&) = delete;
    Interruption (Interruption&&) = delete;
    Interruption& operator= (Interruption&&) = delete;

    /// Whether somebody wants the program to stop.
    bool isWanted() const noexcept;
};

} // namespace stopwright
