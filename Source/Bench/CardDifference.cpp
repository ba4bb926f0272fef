// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CardDifference.h"

#include "Organ/CardDocument.h"

namespace stopwright
{

namespace
{

bool isTrackEnd (const CardKnob& knob, double value) noexcept
{
    return knob.kind == KnobKind::position && (value <= 0.0 || value >= 1.0);
}

} // namespace

std::optional<std::vector<KnobMove>> knobMovesBetween (const Card& from, const Card& to)
{
    const auto knobs = knobsOf (to);
    if (knobs != knobsOf (from))
        return std::nullopt;

    std::vector<KnobMove> moves;
    Card turned = from;
    for (const auto& knob : knobs)
    {
        const double before = valueOf (from, knob);
        const double after = valueOf (to, knob);
        if (before == after)
            continue;
        if (isTrackEnd (knob, before) || isTrackEnd (knob, after))
            return std::nullopt;
        moves.push_back ({ knob, after });
        setValueOf (turned, knob, after);
    }

    if (cardText (turned) != cardText (to))
        return std::nullopt;
    return moves;
}

} // namespace stopwright
