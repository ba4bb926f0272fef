// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_core/juce_core.h>

#include <string>

namespace stopwright
{

/// UTF-8 text of the documents as the window's. Threading: [any].
inline juce::String fromUtf8 (const std::string& text)
{
    return juce::String::fromUTF8 (text.c_str());
}

} // namespace stopwright
