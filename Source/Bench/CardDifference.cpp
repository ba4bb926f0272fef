// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CardDifference.h"

#include <algorithm>

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

    if (turned != to)
        return std::nullopt;
    return moves;
}

bool isSameNetwork (const Card& first, const Card& second)
{
    const auto isSamePart = [] (const Part& one, const Part& two)
    { return one.name == two.name && one.nodes == two.nodes && one.value.index() == two.value.index(); };
    const auto isSameTap = [] (const Tap& one, const Tap& two)
    { return one.name == two.name && one.node == two.node && one.wave == two.wave && one.footage == two.footage; };
    return first.name == second.name && first.output == second.output
           && std::ranges::equal (first.parts, second.parts, isSamePart)
           && std::ranges::equal (first.taps, second.taps, isSameTap);
}

} // namespace stopwright
