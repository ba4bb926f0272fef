// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/Decimator.h"
#include "Sound/OutletStage.h"

#include <cstddef>
#include <span>
#include <vector>

namespace stopwright
{

/// One outlet of the instrument: adds up its preamps at the internal rate, brings the sum down to the device's, and
/// puts the outlet's own effect on it.
///
/// Preamps deliver whole blocks, the device takes what it takes: what is left over waits. `lead` zeros go ahead of
/// everything, so that there is always enough. Threading: construct on [control]; noexcept functions on [audio], no
/// allocation, no lock.
class OutletMix
{
public:
    OutletMix (const Outlet& outlet, double deviceRateHz, int factor, int maxDeviceFrames, int lead, int mostSurplus);

    /// Adds to what comes behind the frames already there, `offset` later.
    void add (std::span<const double> volts, int offset) noexcept;

    /// Closes a piece of so many frames that every preamp has added to.
    void advance (int frames) noexcept;

    /// Takes out.size() device frames and adds them to `out`.
    void renderInto (std::span<double> out) noexcept;

    OutletStage& stage() noexcept { return stage_; }

    int decimatorDelayFrames() const noexcept { return decimator_.delayFrames(); }

    /// Starts so that `carry` frames are still on their way into the preamps' blocks.
    void begin (int carry) noexcept { ready_ = lead_ - static_cast<std::size_t> (carry); }

    bool isLike (const OutletMix& other) const noexcept;
    void copyStateFrom (const OutletMix& other) noexcept;

private:
    Decimator decimator_;
    OutletStage stage_;
    std::size_t lead_;
    std::vector<double> waiting_;
    std::size_t ready_; ///< of them that are complete
    std::vector<double> device_;
};

} // namespace stopwright
