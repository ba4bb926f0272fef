// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KeyRepeat.h"

#define JUCE_GUI_BASICS_INCLUDE_XHEADERS 1
#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

bool askForDetectableKeyRepeat()
{
    auto* const system = juce::XWindowSystem::getInstance();
    if (system == nullptr || system->getDisplay() == nullptr)
        return false;
    // The framework loads the X library while it runs, and so does not name this function of it.
    juce::DynamicLibrary library;
    if (! library.open ("libX11.so.6"))
        return false;
    using Setter = decltype (&XkbSetDetectableAutoRepeat);
    const auto set = reinterpret_cast<Setter> (library.getFunction ("XkbSetDetectableAutoRepeat"));
    Bool isSupported = False;
    return set != nullptr && set (system->getDisplay(), True, &isSupported) != False && isSupported != False;
}

} // namespace stopwright
