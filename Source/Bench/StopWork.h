// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

namespace stopwright
{

/// What is worked on of a stop: its card and, in an instrument, the mixing resistor to its bus.
struct StopWork
{
    Card card;
    double mixingOhms = 0.0; ///< of no meaning for a card alone
};

} // namespace stopwright
