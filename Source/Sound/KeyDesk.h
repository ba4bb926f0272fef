// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Instrument.h"
#include "Sound/HeldKeys.h"

#include <array>
#include <string>
#include <vector>

namespace stopwright
{

/// The keyboards and couplers of an instrument: which keys sound when which are held.
///
/// A held key sounds in its own division and, through each coupler that is drawn, in another or an octave away, as far
/// as the compass goes; couplers do not chain. A key that sounds for several reasons sounds until the last is gone.
/// Threading: construct on [control]; noexcept functions on [audio], no allocation, no lock.
class KeyDesk
{
public:
    explicit KeyDesk (const Instrument& instrument);

    int divisionCount() const noexcept { return static_cast<int> (divisions_.size()); }

    /// A key of a keyboard goes down or up. onChange (division, key, isDown) for every key that begins or ends to sound.
    template <typename OnChange>
    void key (int division, int key, bool down, OnChange onChange) noexcept
    {
        if (! hasKey (division, key) || ! at (division).held.change (key, down))
            return;
        sound (division, key, down, onChange);
        for (const CouplerPath& coupler : couplers_)
            if (coupler.isDrawn && coupler.from == division)
                sound (coupler.to, key + coupler.semitones, down, onChange);
    }

    /// A coupler is drawn or retired while keys may be held.
    template <typename OnChange>
    void drawCoupler (int index, bool drawn, OnChange onChange) noexcept
    {
        CouplerPath& coupler = couplers_[static_cast<std::size_t> (index)];
        if (coupler.isDrawn == drawn)
            return;
        coupler.isDrawn = drawn;
        for (int key = 0; key < HeldKeys::keyCount; ++key)
            if (at (coupler.from).held.isDown (key))
                sound (coupler.to, key + coupler.semitones, drawn, onChange);
    }

    bool sounds (int division, int key) const noexcept
    {
        return at (division).reasons[static_cast<std::size_t> (key)] > 0;
    }

    int soundingKeys() const noexcept;

    /// Holds the keys that `other` holds on keyboards of the same name.
    void adopt (const KeyDesk& other) noexcept;

private:
    struct Division
    {
        std::string name;
        int lowestKey = 0;
        int highestKey = 0;
        HeldKeys held;
        std::array<signed char, HeldKeys::keyCount> reasons {}; ///< why each key sounds: how many
    };

    struct CouplerPath
    {
        int from = 0;
        int to = 0;
        int semitones = 0;
        bool isDrawn = false;
    };

    Division& at (int division) noexcept { return divisions_[static_cast<std::size_t> (division)]; }

    const Division& at (int division) const noexcept { return divisions_[static_cast<std::size_t> (division)]; }

    bool hasKey (int division, int key) const noexcept
    {
        return division >= 0 && division < divisionCount() && key >= at (division).lowestKey
               && key <= at (division).highestKey;
    }

    template <typename OnChange>
    void sound (int division, int key, bool down, OnChange onChange) noexcept
    {
        if (! hasKey (division, key))
            return;
        auto& reasons = at (division).reasons[static_cast<std::size_t> (key)];
        const bool before = reasons > 0;
        reasons = static_cast<signed char> (reasons + (down ? 1 : -1));
        if (before != (reasons > 0))
            onChange (division, key, reasons > 0);
    }

    std::vector<Division> divisions_;
    std::vector<CouplerPath> couplers_;
};

} // namespace stopwright
