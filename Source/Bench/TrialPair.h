// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <optional>
#include <utility>

namespace stopwright
{

/// The trials of one stop: A is the card itself; B, where there is one, another set of values or another network to be
/// compared with it. One of them sounds and is shown.
struct TrialPair
{
    Card a;
    std::optional<Card> b;
    bool isB = false; ///< whether B is in hand; false where there is none

    Card& inHand() noexcept { return isB && b ? *b : a; }

    const Card& inHand() const noexcept { return isB && b ? *b : a; }

    /// The one that is not in hand, or nullptr.
    const Card* other() const noexcept { return ! b ? nullptr : isB ? &a : &*b; }
};

} // namespace stopwright
