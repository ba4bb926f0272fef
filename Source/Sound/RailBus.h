// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/BusNode.h"
#include "Sound/RailStop.h"

#include <vector>

namespace stopwright
{

/// One mixing bus with the stops on it.
/// Threading: construct and addStop on [control]; noexcept functions on [audio], no allocation, no lock.
class RailBus
{
public:
    RailBus (const MixingBus& bus, double sampleRateHz) : node_ (bus, sampleRateHz) {}

    /// The stop must outlive the bus.
    void addStop (RailStop& stop) { stops_.push_back (&stop); }

    /// Plays one block from `frame` of the tones on and writes RailStop::length volts.
    void process (int frame, double* volts) noexcept;

    void adopt (const RailBus& other) noexcept
    {
        node_.adopt (other.node_);
        isSettled_ = false;
    }

private:
    void settle() noexcept;

    BusNode node_;
    std::vector<RailStop*> stops_;
    BusNode::Stops together_; ///< kernel and conductance hold as long as nothing changes
    bool isSettled_ = false;
};

} // namespace stopwright
