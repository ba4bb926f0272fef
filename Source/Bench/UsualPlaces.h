// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"

#include <juce_core/juce_core.h>

#include <filesystem>

namespace stopwright
{

/// Where files are looked for first. Threading: message thread.

/// The framework's name of a path; no file for an empty one.
juce::File fileFrom (const std::filesystem::path& path);

/// The folder of the open document, or the user's when it has none.
juce::File folderOf (const BenchDocument& document);

/// What comes with the program; no file when it is not there.
juce::File demonstrationOrgan();
juce::File demonstrationPhrase();
juce::File masksFolder(); ///< of the target masks

} // namespace stopwright
