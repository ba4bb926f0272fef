// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DisplayCheck.h"

#include <dlfcn.h>

namespace stopwright
{

bool hasDisplay()
{
    // The framework loads the X library while it runs; so do we, and leave it loaded.
    void* const library = dlopen ("libX11.so.6", RTLD_LAZY);
    if (library == nullptr)
        return false;
    using Open = void* (*) (const char*);
    using Close = int (*) (void*);
    const auto open = reinterpret_cast<Open> (dlsym (library, "XOpenDisplay"));
    const auto close = reinterpret_cast<Close> (dlsym (library, "XCloseDisplay"));
    if (open == nullptr || close == nullptr)
        return false;
    void* const display = open (nullptr);
    if (display == nullptr)
        return false;
    close (display);
    return true;
}

} // namespace stopwright
