// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_core/juce_core.h>

namespace stopwright
{

/// The cautions that the program and its README carry (Assets/Cautions.txt), without their heading: bullets as
/// paragraphs. Threading: [any].
juce::String cautionsForReading();

} // namespace stopwright
