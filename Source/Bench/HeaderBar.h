// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <array>

namespace stopwright
{

/// The title block of the sheet: what is open and whether it is saved, the stop in hand, and what can be done with the
/// document. Where a row is short the title is, and then there are two. Threading: message thread.
class HeaderBar : public juce::Component, private BenchSession::Listener
{
public:
    struct Actions
    {
        std::function<void()> open;
        std::function<void()> save;
        std::function<void()> saveAs;
        std::function<void()> audio;
        std::function<void (juce::Component&)> view; ///< opens the menu of the view, at the button given
        std::function<void (int)> chooseStop;
    };

    HeaderBar (BenchSession& session, Actions actions);
    ~HeaderBar() override;

    /// How tall the bar must be at this width.
    int heightFor (int width) const;

    juce::String titleText() const;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void fillStops();
    void refresh();
    int buttonWidth (const juce::TextButton& button) const;
    int buttonsWidth() const;
    int roomInRow (int width) const;
    bool isOneRow (int width) const;
    int stopsWidth (int width) const;
    static int markWidth();
    juce::Rectangle<int> titleArea() const;

    BenchSession& session_;
    Actions actions_;
    juce::ComboBox stops_;
    juce::TextButton open_ { "Open" };
    juce::TextButton save_ { "Save" };
    juce::TextButton saveAs_ { "Save as" };
    juce::TextButton undo_ { "Undo" };
    juce::TextButton redo_ { "Redo" };
    juce::TextButton audio_ { "Audio" };
    juce::TextButton view_ { "View" };
    const std::array<juce::TextButton*, 7> buttons_ { &open_, &save_, &saveAs_, &undo_, &redo_, &audio_, &view_ };
};

} // namespace stopwright
