// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// A word of the trade in the window, with dots under it: a click opens the glossary at its term. The keyboard gets there
/// with F1 on the control beside it. Threading: message thread.
class TermMark : public juce::Component, public juce::SettableTooltipClient
{
public:
    enum class Style
    {
        title,
        strong
    };

    /// `words` is what is read, `term` what it is called in the glossary.
    TermMark (const juce::String& words, const juce::String& term, Style style);

    int widthWanted() const;

    void paint (juce::Graphics& graphics) override;
    void mouseUp (const juce::MouseEvent& event) override;

private:
    juce::Font font() const;

    juce::String words_;
    juce::String term_;
    Style style_;
};

} // namespace stopwright
