// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"

#include <string>
#include <vector>

namespace stopwright
{

/// One reading of where a card with diodes, transistors or supplies stands while every key is up.
struct RestReading
{
    std::string name;   ///< the device, or "node b"
    std::string number; ///< "1.23 V", "0.92 mA"
    std::string words;  ///< what a device does: "active", "blocking"; empty for a node

    bool operator== (const RestReading&) const = default;
};

/// Devices in the card's order, then its nodes. Empty for a card that has no device and for one that finds no rest.
/// Threading: [control], under a millisecond for a card of a dozen parts.
std::vector<RestReading> restReadingsOf (const Card& card);

} // namespace stopwright
