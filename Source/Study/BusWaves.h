// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/LockedGroup.h"
#include "Study/RailStudy.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// The drawn stops of one mixing bus. Threading: [control].
std::vector<std::size_t> drawnStopsOn (const RailStudy& rail, std::size_t bus);

/// All waves that drawn stops and sounding keys put on one mixing bus, each with its way from the tap to what is heard of
/// the bus. The study must outlive it, and it the groups it gives out.
/// Threading: [control].
class BusWaves
{
public:
    /// `soundingKeys` as the function of that name gives them.
    BusWaves (const RailStudy& rail, std::size_t bus, const std::vector<std::vector<int>>& soundingKeys);

    ~BusWaves() = default;
    BusWaves (const BusWaves&) = delete;
    BusWaves& operator= (const BusWaves&) = delete;
    BusWaves (BusWaves&&) = delete;
    BusWaves& operator= (BusWaves&&) = delete;

    std::vector<LockedGroup> groups() const { return lockedGroups (waves_); }

private:
    void addTap (std::size_t stop, std::size_t tap, const std::vector<int>& keys);

    const RailStudy& rail_;
    std::size_t bus_;
    RailState state_;
    std::vector<std::unique_ptr<ResponseCurve>> curves_;
    std::vector<SoundingWave> waves_;
};

} // namespace stopwright
