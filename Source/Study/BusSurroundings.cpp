// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BusSurroundings.h"

#include <utility>

namespace stopwright
{

BusSurroundings::BusSurroundings (const RailStudy& study,
                                  std::size_t bus,
                                  RailState state,
                                  std::optional<std::size_t> leftOut)
    : study_ (study),
      bus_ (bus),
      state_ (std::move (state)),
      leftOut_ (leftOut)
{
    if (leftOut_)
        state_.stands[*leftOut_] = StopStand::open;
}

const BusSurroundings::At& BusSurroundings::at (double frequencyHz) const
{
    const auto known = kept_.find (frequencyHz);
    if (known != kept_.end())
        return known->second;

    const MixingBus& values = study_.instrument().mixingBuses[bus_];
    At around;
    around.drive = study_.preampGain (bus_, frequencyHz);
    around.siemens = study_.busSiemens (bus_, state_, frequencyHz);
    if (leftOut_)
        around.leftOutOhms = study_.port (*leftOut_).at (frequencyHz).ohms;
    if (values.kind == BusKind::virtualEarth && ! values.gainBandwidthHz)
    {
        around.drive *= -values.feedbackOhms;
        around.amplifier = 1.0;
        around.felt = 0.0;
    }
    else if (values.kind == BusKind::virtualEarth)
    {
        const std::complex<double> amplification { 0.0, -*values.gainBandwidthHz / frequencyHz };
        around.drive *= -amplification;
        around.amplifier = (1.0 + amplification) / values.feedbackOhms;
    }
    return kept_.emplace (frequencyHz, around).first->second;
}

} // namespace stopwright
