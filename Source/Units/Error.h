// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>

namespace stopwright
{

/// A refusal in one sentence that names the part, node, key or text at fault and says what to do instead.
///
/// Everything that checks what a user wrote throws this and nothing else, so a program needs one handler to show it.
/// Threading: [control] only; code of the audio thread is noexcept and never throws.
class Error : public std::runtime_error
{
public:
    using std::runtime_error::runtime_error;
};

} // namespace stopwright
