// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/KeySource.h"

namespace stopwright
{

KeySource keySourceForCardAlone (const Card& card, double highestHz)
{
    constexpr double referenceHz = 440.0;
    return { .tuning = Tuning::equalTempered (referenceHz, highestHz, MutationSource::exact, mutationsOf (card)),
             .keyer = {} };
}

} // namespace stopwright
