// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

namespace stopwright::test
{

/// One tap (W1) and one part of the kinds a knob or a switch differs by: R1, P1, S1.
Card smallCard();

} // namespace stopwright::test
