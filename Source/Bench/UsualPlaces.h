// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

/// Where files are looked for first. Threading: message thread.

/// The folder of the open document, or the user's when it has none.
juce::File folderOf (const BenchDocument& document);

/// What comes with the program; no file when it is not there.
juce::File demonstrationOrgan();
juce::File demonstrationPhrase();
juce::File masksFolder(); ///< of the target masks

} // namespace stopwright
