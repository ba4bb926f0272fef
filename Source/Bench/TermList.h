// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// A list of words, one a line, that shows when it has the keyboard. Threading: message thread.
class TermList : public juce::ListBox
{
public:
    /// What a model answers refreshComponentForRow with: the line it was given, or a new one, which the list then owns.
    static juce::Component* lineFor (juce::Component* existing, const juce::String& words, bool isSelected);

    void paintOverChildren (juce::Graphics& graphics) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    class Line : public juce::Component
    {
    public:
        Line() { setInterceptsMouseClicks (false, false); } // the list takes the clicks

        void show (const juce::String& words, bool isSelected);
        void paint (juce::Graphics& graphics) override;

    private:
        juce::String words_;
        bool isSelected_ = false;
    };
};

} // namespace stopwright
