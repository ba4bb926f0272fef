// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SmallCard.h"

namespace stopwright::test
{

Card smallCard()
{
    Card card;
    card.taps.push_back ({ "W1", Wave {}, Footage {}, 2.0, 0.0, "in", 1, {} });
    card.parts.push_back ({ "R1", { "in", "out" }, Resistor { 47e3 }, 0.05 });
    card.parts.push_back ({ "P1", { "out", "w", "0" }, Potentiometer { 10e3, 0.5, Taper::linear }, 0.2 });
    card.parts.push_back ({ "S1", { "w", "0" }, Switch { false }, 0.0 });
    card.output = std::string ("w");
    return card;
}

} // namespace stopwright::test
