// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/WaveSource.h"
#include "Organ/WhenRetired.h"

#include <optional>
#include <string>

namespace stopwright
{

/// Who comes later wants to know: the day of the work as "2026-11-27", and why it was done. Either may be empty.
struct AlterationNote
{
    std::string date;
    std::string why;

    bool operator== (const AlterationNote&) const = default;
};

/// What of a stop was otherwise before the work; the rest is as it was found. Names are kept as they were, whether the
/// instrument still has what they name or not. Units: ohms.
struct AsFoundStop
{
    std::optional<std::string> bus; ///< empty: on none
    std::optional<double> mixingOhms;
    std::optional<WhenRetired> whenRetired;
    std::optional<int> polarity;
    std::optional<std::string> division;
    std::optional<std::string> cardFile; ///< empty: a blank tablet
    AlterationNote note;

    bool operator== (const AsFoundStop&) const = default;
};

/// The same of a tap. `source` is the keyed wave it was on.
struct AsFoundTap
{
    std::optional<WaveSource> source;
    std::optional<int> polarity;
    std::optional<std::string> node;
    AlterationNote note;

    bool operator== (const AsFoundTap&) const = default;
};

} // namespace stopwright
