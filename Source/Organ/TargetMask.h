// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Footage.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// How far what a mask says can be trusted.
enum class Certainty
{
    published,     ///< a published work says so; `source` names it
    measured,      ///< readings of the owner's; `source` may say of what
    commonPractice ///< known in the trade, no source
};

/// "published", "measured", "common practice". Threading: [any].
std::string_view certaintyWord (Certainty certainty) noexcept;

/// What the levels of a mask's harmonics count from.
enum class MaskReference
{
    strongest, ///< the strongest partial
    first      ///< harmonic 1 of the mask
};

/// What one entry of a mask wants: a level and how far off it may be, both in dB. Keys (MIDI numbers) and origin where
/// they differ from those of the whole mask.
struct MaskWish
{
    double levelDb = 0.0;
    double toleranceDb = 0.0;
    std::optional<int> lowestKey {};
    std::optional<int> highestKey {};
    std::optional<Certainty> certainty {};
    std::string source {};
};

/// A wanted partial: its number counted from the mask's unison.
struct MaskHarmonic
{
    int harmonic = 1;
    bool atMost = false; ///< the level is an upper bound; silence is as good
    MaskWish wish {};
};

/// A wanted formant, whatever the key: the strongest partial between centre - width/2 and centre + width/2. Its level is
/// always re the strongest partial of the tone.
struct MaskBand
{
    std::string name;
    double centreHz = 1000.0;
    double widthHz = 200.0;
    MaskWish wish {};
};

/// A target for a stop: levels it should have, each with a tolerance, for which keys that is meant, and who says so.
/// Fields of a document that the program does not know are kept: keys are "mask", "harmonic:NUMBER" and "band:NAME".
struct TargetMask
{
    std::string name;
    std::string note;
    Footage unison = Footage::parse ("8"); ///< whose fundamental is harmonic 1
    MaskReference reference = MaskReference::strongest;
    int lowestKey = 0;
    int highestKey = 127;
    Certainty certainty = Certainty::commonPractice;
    std::string source;
    std::vector<MaskHarmonic> harmonics;
    std::vector<MaskBand> bands;
    std::map<std::string, std::string> unknownFields;

    /// Whether the mask as a whole is meant for a key. Threading: [any].
    bool isFor (int key) const noexcept { return key >= lowestKey && key <= highestKey; }

    /// Whether an entry says something about a key: its own limits, not those of the whole. Threading: [any].
    static bool entryIsFor (const MaskWish& wish, int key) noexcept
    {
        return key >= wish.lowestKey.value_or (0) && key <= wish.highestKey.value_or (mostKeys - 1);
    }

    /// Level of a harmonic re the strongest partial the mask wants. Threading: [any].
    double levelReStrongest (const MaskHarmonic& harmonic) const noexcept;

private:
    static constexpr int mostKeys = 128;
};

} // namespace stopwright
