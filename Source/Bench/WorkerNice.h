// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Has the calling thread step back where processors are scarce: for what is worked out beside the window, which must not
/// keep the window or the sound waiting. Linux counts niceness by thread, and JUCE's priorities do nothing there.
/// Threading: the worker itself, once at its start.
void stepBack() noexcept;

} // namespace stopwright
