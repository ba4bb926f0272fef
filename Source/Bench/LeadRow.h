// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <string>
#include <vector>

namespace stopwright
{

/// A line with a name and a choice: which node a lead goes to, or which keyed bus a tap is taken from.
/// Threading: message thread.
class LeadRow : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr float height = 26.0f; ///< at lettering scale 1

    /// `term` is its word of the glossary.
    LeadRow (const juce::String& label, const juce::String& tooltip, const juce::String& term);

    /// What can be chosen, and what is; `present` need not be among the choices. `newLabel`, where given, is one more
    /// choice: a node of its own.
    void fill (const std::vector<std::string>& choices, const std::string& present, const juce::String& newLabel = {});

    /// Told the choice; empty for the new one.
    std::function<void (const std::string&)> onChoose;

    juce::ComboBox& box() noexcept { return box_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    juce::String label_;
    juce::ComboBox box_;
    std::vector<std::string> choices_;
};

} // namespace stopwright
