// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"

namespace stopwright
{

/// What a reading shows and the words it uses, for someone who meets them for the first time. Threading: [any].
const char* readingLesson (ReadingKind kind) noexcept;

} // namespace stopwright
