// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// What a stop that is not drawn leaves on its bus.
enum class WhenRetired
{
    open,    ///< nothing: the mixing resistor hangs free, and the bus grows louder for the others
    grounded ///< its mixing resistor to common, so that levels stay as they are
};

} // namespace stopwright
