// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <memory>
#include <vector>

namespace stopwright
{

/// A page laid over the window: a heading, a text to read, perhaps some controls, and the buttons that end it. While it
/// is up nothing behind it can be reached. Threading: message thread.
class SheetPage : public juce::Component
{
public:
    struct Choice
    {
        juce::String label;
        std::function<void()> action;
    };

    /// The first choice is what Return does, the last of several what Escape does.
    SheetPage (const juce::String& heading,
               const juce::String& text,
               std::vector<Choice> choices,
               std::unique_ptr<juce::Component> controls = nullptr,
               int controlsHeight = 0);

    /// Nothing of what lies behind is seen, and the typing keys go on playing: for listening without looking.
    void setListeningOnly() { isListeningOnly_ = true; }

    /// Escape does its only choice, too: nothing has to be answered.
    void setClosedByEscape() { isClosedByEscape_ = true; }

    /// What answers mayGo(); without it a page may always go.
    void setMayGo (std::function<bool()> mayGo) { mayGo_ = std::move (mayGo); }

    /// Whether nothing would be lost with the page. One that would lose something says so.
    bool mayGo() const { return mayGo_ == nullptr || mayGo_(); }

    bool isListeningOnly() const noexcept { return isListeningOnly_; }

    /// Puts the keyboard on the first button, or on what was set here instead: one of the page's controls.
    void takeFocus();

    void setFirstFocus (juce::Component& control) { first_ = &control; }

    /// The keyboard begins on the last choice, where the first would lose something.
    void setFirstFocusOnLast() { first_ = buttons_.back().get(); }

    void paint (juce::Graphics& graphics) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress& key) override;
    void lookAndFeelChanged() override;

private:
    juce::Rectangle<int> sheetArea() const;
    void choose (std::size_t index);
    int textHeight (int width) const;

    juce::String heading_;
    juce::Component* first_ = nullptr; ///< what takes the keyboard; the first button when there is none
    juce::TextEditor text_;
    std::unique_ptr<juce::Component> controls_;
    int controlsHeight_;
    std::function<bool()> mayGo_;
    bool isListeningOnly_ = false;
    bool isClosedByEscape_ = false;
    std::vector<Choice> choices_;
    std::vector<std::unique_ptr<juce::TextButton>> buttons_;
};

} // namespace stopwright
