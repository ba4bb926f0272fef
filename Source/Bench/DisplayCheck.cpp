// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DisplayCheck.h"

#include <juce_core/juce_core.h>

namespace stopwright
{

bool hasDisplay()
{
    // The framework loads the X library while it runs, and so do we.
    juce::DynamicLibrary library;
    if (! library.open ("libX11.so.6"))
        return false;
    using Open = void* (*) (const char*);
    using Close = int (*) (void*);
    const auto open = reinterpret_cast<Open> (library.getFunction ("XOpenDisplay"));
    const auto close = reinterpret_cast<Close> (library.getFunction ("XCloseDisplay"));
    void* const display = open != nullptr && close != nullptr ? open (nullptr) : nullptr;
    if (display == nullptr)
        return false;
    close (display);
    return true;
}

} // namespace stopwright
