// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/AudioHost.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The controls of the audio set-up: sound system, output, and what MIDI inputs are heard. Threading: message thread.
class AudioPage : public juce::Component
{
public:
    static constexpr float height = 118.0f; ///< at lettering scale 1

    explicit AudioPage (AudioHost& host);

    /// Told of the outcome of a choice: empty, or a sentence.
    std::function<void (const juce::String&)> onChosen;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void fillOutputs();
    void choose();
    juce::Rectangle<int> row (int index) const;

    AudioHost& host_;
    juce::ComboBox system_;
    juce::ComboBox output_;
};

} // namespace stopwright
