// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <string_view>

namespace stopwright
{

/// The part or tap of that name, the first of several. Threading: [control].
/// Fails: Error that says what the card has instead.
Part& partNamed (Card& card, std::string_view name);
Tap& tapNamed (Card& card, std::string_view name);

/// Whether a part or a tap of the card has this name: they share their names. Threading: [any].
bool isNameTaken (const Card& card, std::string_view name) noexcept;

/// Fails: Error when it is taken. Threading: [control].
void requireFreeName (const Card& card, std::string_view name);

/// The letters with the number after the highest that a part or tap of the card has with them: "R7" where R6 and R2 are.
/// A number that became free stays free, for old drawings may show it. Threading: [control].
std::string nextName (const Card& card, std::string_view letters);

} // namespace stopwright
