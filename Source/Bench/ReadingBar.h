// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/ReadingChoices.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <vector>

namespace stopwright
{

/// The settings that belong to the reading that is shown, and the button to keep it. Threading: message thread.
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
    std::function<void (juce::Component&)> onKeep;   ///< opens the choice of what to keep

    /// After the choices were changed elsewhere.
    void refresh();

    juce::TextButton& target() noexcept { return target_; }

    juce::TextButton& keep() noexcept { return keep_; }

    juce::ComboBox& volts() noexcept { return volts_; }

    juce::ComboBox& time() noexcept { return time_; }

    juce::ComboBox& level() noexcept { return level_; }

    juce::ComboBox& stageKeys() noexcept { return stageKeys_; }

    juce::ToggleButton& phase() noexcept { return phase_; }

    void resized() override;

private:
    void fill();
    void connect();
    void tell (Need need);

    ReadingChoices& choices_;
    std::vector<double> voltSteps_;
    std::vector<double> timeSteps_;
    juce::TextButton target_;
    juce::ToggleButton phase_ { "Phase" };
    juce::ComboBox volts_;
    juce::ComboBox time_;
    juce::ComboBox level_;
    juce::ComboBox stageKeys_;
    juce::TextButton keep_ { "Keep" };
};

} // namespace stopwright
