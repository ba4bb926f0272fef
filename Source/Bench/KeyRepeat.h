// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

/// Asks the X server to repeat a held key as presses alone ("detectable auto-repeat", X Keyboard Extension protocol,
/// section 4.1.3). By default it repeats a key as a release and a press; the framework takes such a pair for a repeat
/// only when both carry the same millisecond and both have arrived, and else a note held by a typing key would be let
/// go and struck again. Threading: message thread, once a window is there.
/// @return  whether the server does it.
bool askForDetectableKeyRepeat();

} // namespace stopwright
