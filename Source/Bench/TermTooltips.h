// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The tooltips of the window; one of a control that is about a word of the trade ends with the way to the glossary.
/// Threading: message thread.
class TermTooltips : public juce::TooltipWindow
{
public:
    using TooltipWindow::TooltipWindow;

    juce::String getTipFor (juce::Component& component) override;

    /// What is added for a term: "F1: mixing resistor".
    static juce::String leadTo (const juce::String& term);
};

} // namespace stopwright
