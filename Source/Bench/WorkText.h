// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"

#include <filesystem>
#include <string>

namespace stopwright
{

/// Unsaved work as it is kept against a crash: which document it is about, and the whole text of what was changed.
struct KeptWork
{
    std::filesystem::path file; ///< the instrument's, or the card's; may be gone since
    BenchWork work;
};

/// JSON text of it. Threading: [control].
std::string keptWorkText (const BenchDocument& document);

/// Reads it back. Fails: Error with a sentence when it is no such text.
KeptWork parseKeptWork (const std::string& text);

} // namespace stopwright
