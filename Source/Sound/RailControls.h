// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Organ/Instrument.h"
#include "Sound/RailRack.h"

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// The numbers of everything on an instrument that can be drawn, switched or turned: couplers first, then outlets, then
/// rate and depth of each tremulant, then for each stop its draw and its knobs.
/// Threading: construct and find on [control]; noexcept functions on [audio], no allocation, no lock.
class RailControls
{
public:
    RailControls (const Instrument& instrument, const RailRack& rack);

    std::optional<int> findDraw (const std::string& tablet) const;
    std::optional<int> findCoupler (const std::string& tablet) const;
    std::optional<int> findOutletSwitch (const std::string& outlet) const;

    /// The rate of a tremulant in Hz; its depth has the number after that.
    std::optional<int> findTremulant (const std::string& outlet) const;

    std::optional<int> findKnob (const std::string& tablet, const PartKnob& knob) const;
    std::optional<int> findTapLevelKnob (const std::string& tablet, const std::string& tap) const;
    std::optional<int> findMixingKnob (const std::string& tablet) const;

    int count() const noexcept { return count_; }

    bool isCoupler (int index) const noexcept { return index < couplerCount(); }

    /// Index of the outlet that a control switches, if it does.
    bool isOutlet (int index) const noexcept { return ! isCoupler (index) && index < firstOfTremulants(); }

    int outletOf (int index) const noexcept { return index - couplerCount(); }

    /// Whether a control is the rate or the depth of a tremulant, of which outlet, and which of the two.
    bool isTremulant (int index) const noexcept { return index >= firstOfTremulants() && index < firstOfStops(); }

    std::size_t tremulantOutletOf (int index) const noexcept
    {
        return tremulants_[static_cast<std::size_t> (index - firstOfTremulants()) / 2];
    }

    bool isDepth (int index) const noexcept { return (index - firstOfTremulants()) % 2 == 1; }

    /// Draws a stop or turns one of its knobs.
    void setStop (int index, double value) noexcept;

    bool stopsMove() const noexcept;

private:
    struct StopControls
    {
        std::string tablet;
        RailStop* stop = nullptr;
        int first = 0; ///< its draw, then its knobs
    };

    int couplerCount() const noexcept { return static_cast<int> (couplers_.size()); }

    int firstOfTremulants() const noexcept { return couplerCount() + static_cast<int> (outlets_.size()); }

    int firstOfStops() const noexcept { return firstOfTremulants() + 2 * static_cast<int> (tremulants_.size()); }

    const StopControls* find (const std::string& tablet) const;

    std::vector<std::string> couplers_, outlets_;
    std::vector<std::size_t> tremulants_; ///< indices of the outlets that are one
    std::vector<StopControls> stops_;
    int count_ = 0;
};

} // namespace stopwright
