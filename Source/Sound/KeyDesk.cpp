// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyDesk.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int semitonesPerOctave = 12;

int indexOf (const std::vector<Division>& divisions, const std::string& name)
{
    const auto found = std::ranges::find (divisions, name, &Division::name);
    return static_cast<int> (found - divisions.begin());
}

} // namespace

KeyDesk::KeyDesk (const Instrument& instrument)
{
    for (const auto& division : instrument.divisions)
        divisions_.push_back ({ division.name,
                                std::max (0, division.lowestKey),
                                std::min (HeldKeys::keyCount - 1, division.highestKey),
                                {},
                                {} });
    for (const auto& coupler : instrument.couplers)
        couplers_.push_back ({ indexOf (instrument.divisions, coupler.from), indexOf (instrument.divisions, coupler.to),
                               semitonesPerOctave * coupler.octaves, coupler.drawn });
}

int KeyDesk::soundingKeys() const noexcept
{
    int count = 0;
    for (const Division& division : divisions_)
        count += static_cast<int> (
            std::ranges::count_if (division.reasons, [] (signed char reasons) { return reasons > 0; }));
    return count;
}

void KeyDesk::adopt (const KeyDesk& other) noexcept
{
    const auto ignore = [] (int, int, bool) {};
    for (int division = 0; division < divisionCount(); ++division)
    {
        const auto same = std::ranges::find (other.divisions_, at (division).name, &Division::name);
        if (same == other.divisions_.end())
            continue;
        for (int number = 0; number < HeldKeys::keyCount; ++number)
            key (division, number, same->held.isDown (number), ignore);
    }
}

} // namespace stopwright
