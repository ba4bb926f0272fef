// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Whether the X server that DISPLAY names lets us in. The framework takes that for granted. Call it before the
/// framework is at work. Threading: [control].
bool hasDisplay();

} // namespace stopwright
