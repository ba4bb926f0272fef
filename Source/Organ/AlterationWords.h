// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/ChangeList.h"

#include <span>
#include <string>

namespace stopwright
{

// How the change list speaks. For the .cpp files of this folder only. Threading: [control].

/// A pair of things, one as found and one as altered.
template <typename Value>
struct Ends
{
    const Value& asFound;
    const Value& asAltered;
};

/// Fill in what is read of an alteration whose `field` and `where` are set; `owner` is what a sentence calls the tablet or
/// tap ("tap W1 of \"Krummhorn 8\"").
void describeBus (Alteration& alteration, const std::string& owner, Ends<std::string> ends);
void describeMixing (Alteration& alteration, const std::string& owner, Ends<double> ends);
void describeRetired (Alteration& alteration, const std::string& owner, Ends<WhenRetired> ends);
void describePolarity (Alteration& alteration, const std::string& owner, Ends<int> ends);
void describeDivision (Alteration& alteration, const std::string& owner, Ends<std::string> ends);
void describeCard (Alteration& alteration, const std::string& owner, Ends<std::string> ends);
void describeSource (Alteration& alteration,
                     const std::string& owner,
                     Ends<WaveSource> ends,
                     std::span<const KeyedBus> keyedBuses);
void describeNode (Alteration& alteration, const std::string& owner, Ends<std::string> ends);

} // namespace stopwright
