// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <optional>

namespace stopwright
{

/// The end of a lead of the part in hand: dragged to another wire it is soldered there, dragged to an empty place it gets a
/// node of its own. Threading: message thread.
class LeadHandle : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr float side = 12.0f; ///< at lettering scale 1

    LeadHandle (std::size_t lead, const juce::String& name);

    std::size_t lead() const noexcept { return lead_; }

    /// Where the pointer is while it is dragged, in the parent; empty while it is not.
    std::optional<juce::Point<float>> draggedTo() const noexcept { return draggedTo_; }

    std::function<void (const LeadHandle&, juce::Point<float>)> onDrop;

    void paint (juce::Graphics& graphics) override;
    void mouseDrag (const juce::MouseEvent& event) override;
    void mouseUp (const juce::MouseEvent& event) override;

private:
    std::size_t lead_;
    std::optional<juce::Point<float>> draggedTo_;
};

} // namespace stopwright
