// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/AudioHost.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <memory>
#include <vector>

namespace stopwright
{

/// The controls of the audio set-up: sound system, output, and which MIDI inputs are heard. An input that is plugged in
/// while it is up appears. Threading: message thread.
class AudioPage : public juce::Component, private juce::Timer
{
public:
    static constexpr int mostInputs = 5; ///< that have room; one line tells of more

    explicit AudioPage (AudioHost& host);

    /// How tall it wants to be, at the lettering scale in force.
    static int heightWanted();

    /// Told of the outcome of a choice of output: empty, or a sentence.
    std::function<void (const juce::String&)> onChosen;

    /// Told which MIDI inputs are not to be heard, when that was changed.
    std::function<void (const juce::StringArray&)> onMidiChosen;

    /// Shows these MIDI inputs, by name.
    void showInputs (const juce::StringArray& names);

    /// The switches of the inputs that are shown, ticked where one is heard.
    const std::vector<std::unique_ptr<juce::ToggleButton>>& inputs() const noexcept { return inputs_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void timerCallback() override { showInputs (host_.midiInputs()); }

    void fillOutputs();
    void choose();
    void hear (const juce::String& name, bool isHeard);
    juce::Rectangle<int> row (int index) const;
    juce::String inputsText() const;

    AudioHost& host_;
    juce::ComboBox system_;
    juce::ComboBox output_;
    juce::StringArray names_;
    std::vector<std::unique_ptr<juce::ToggleButton>> inputs_;
};

} // namespace stopwright
