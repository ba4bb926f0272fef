// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <vector>

namespace stopwright
{

/// The settings that belong to the reading that is shown. Threading: message thread.
class ReadingBar : public juce::Component
{
public:
    static constexpr float height = 28.0f;

    /// What a changed setting asks for.
    enum class Need
    {
        picture, ///< another picture of the same reading
        reading  ///< another reading
    };

    /// `choices` is shown and changed; it must outlive the bar.
    explicit ReadingBar (ReadingChoices& choices);

    std::function<void (Need)> onChange;
    std::function<void (juce::Component&)> onTarget; ///< opens the choice of masks at the button

    /// After the choices were changed elsewhere.
    void refresh();

    juce::TextButton& target() noexcept { return target_; }

    juce::ComboBox& volts() noexcept { return volts_; }

    juce::ComboBox& time() noexcept { return time_; }

    juce::ComboBox& level() noexcept { return level_; }

    juce::ComboBox& stageKeys() noexcept { return stageKeys_; }

    juce::ToggleButton& phase() noexcept { return phase_; }

    /// Places the controls for the lettering in force, in no more than `available` pixels; how many they take.
    int layOut (int available);

private:
    void fill();
    void connect();
    void tell (Need need) const;

    ReadingChoices& choices_;
    std::vector<double> voltSteps_;
    std::vector<double> timeSteps_;
    juce::TextButton target_;
    juce::ToggleButton phase_ { "Phase" };
    juce::ComboBox volts_;
    juce::ComboBox time_;
    juce::ComboBox level_;
    juce::ComboBox stageKeys_;
};

} // namespace stopwright
