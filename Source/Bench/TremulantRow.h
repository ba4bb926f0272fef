// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/RailKnob.h"

namespace stopwright
{

/// Rate and depth of one tremulant as knobs, one below the other under its switch in the stop list. Threading: message thread.
class TremulantRow : public juce::Component
{
public:
    static constexpr float height = 2.0f * RailKnob::height; ///< at lettering scale 1

    TremulantRow (BenchSession& session, const std::string& outlet);

    const std::string& outlet() const noexcept { return rate_.knob().name; }

    KnobCell& rate() noexcept { return rate_; }

    KnobCell& depth() noexcept { return depth_; }

    /// Brings what is shown up to date with the instrument and with what is saved.
    void refresh();

    void resized() override;

private:
    Series series_ = Series::e12; ///< neither goes by it
    RailKnob rate_, depth_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (TremulantRow)
};

} // namespace stopwright
