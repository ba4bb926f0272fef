// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright::test
{

/// Lets the program live on after an error report of the display, as the framework does in a standalone program: on a
/// display without a window manager it asks for properties that nobody has named there.
void surviveDisplayErrors();

} // namespace stopwright::test
