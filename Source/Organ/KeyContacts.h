// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace stopwright
{

/// The contacts under a key close one after the other: the keyed buses in `order` first, each staggerSeconds after the
/// one before; buses not named close with the last. They open in the opposite order. 0 .. 0.05 s.
struct KeyContacts
{
    std::vector<std::string> order; ///< names of keyed buses
    double staggerSeconds = 0.0;

    bool operator== (const KeyContacts&) const = default;
};

} // namespace stopwright
