// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/Palette.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// How the window's controls are drawn: lines on a drafting sheet. Panels ask it for the palette.
/// Threading: message thread.
class BenchLook : public juce::LookAndFeel_V4
{
public:
    BenchLook();

    const Palette& palette() const noexcept { return *palette_; }

    bool isNight() const noexcept { return isNight_; }

    void setNight (bool night);

    /// The palette of the window a component stands in; by day when it stands in none.
    static const Palette& paletteOf (const juce::Component& component);

    /// A double line round a control that has the keyboard.
    static void
        drawFocusRing (juce::Graphics& graphics, const juce::Component& component, juce::Rectangle<float> bounds);

    /// The frame and ground of a panel.
    static void drawSheet (juce::Graphics& graphics, const juce::Component& component);

    void drawButtonBackground (juce::Graphics& graphics,
                               juce::Button& button,
                               const juce::Colour& background,
                               bool isHighlighted,
                               bool isDown) override;
    void drawButtonText (juce::Graphics& graphics, juce::TextButton& button, bool isHighlighted, bool isDown) override;
    juce::Font getTextButtonFont (juce::TextButton& button, int buttonHeight) override;
    void drawToggleButton (juce::Graphics& graphics,
                           juce::ToggleButton& button,
                           bool isHighlighted,
                           bool isDown) override;

    void drawComboBox (juce::Graphics& graphics,
                       int width,
                       int height,
                       bool isDown,
                       int buttonX,
                       int buttonY,
                       int buttonWidth,
                       int buttonHeight,
                       juce::ComboBox& box) override;
    juce::Font getComboBoxFont (juce::ComboBox& box) override;
    void positionComboBoxText (juce::ComboBox& box, juce::Label& label) override;
    void drawLabel (juce::Graphics& graphics, juce::Label& label) override;

    /// Menus open within the window, which works without a window manager too.
    juce::PopupMenu::Options getOptionsForComboBoxPopupMenu (juce::ComboBox& box, juce::Label& label) override;
    juce::Font getPopupMenuFont() override;

    void drawScrollbar (juce::Graphics& graphics,
                        juce::ScrollBar& bar,
                        int x,
                        int y,
                        int width,
                        int height,
                        bool isVertical,
                        int thumbStart,
                        int thumbSize,
                        bool isOver,
                        bool isDown) override;
    void drawTextEditorOutline (juce::Graphics& graphics, int width, int height, juce::TextEditor& editor) override;

    juce::AttributedString createFileChooserHeaderText (const juce::String& title,
                                                        const juce::String& instructions) override;
    void layoutFileBrowserComponent (juce::FileBrowserComponent& browser,
                                     juce::DirectoryContentsDisplayComponent* list,
                                     juce::FilePreviewComponent* preview,
                                     juce::ComboBox* path,
                                     juce::TextEditor* name,
                                     juce::Button* upwards) override;
    void drawFileBrowserRow (juce::Graphics& graphics,
                             int width,
                             int height,
                             const juce::File& file,
                             const juce::String& name,
                             juce::Image* icon,
                             const juce::String& size,
                             const juce::String& time,
                             bool isFolder,
                             bool isSelected,
                             int index,
                             juce::DirectoryContentsDisplayComponent& list) override;

    juce::Rectangle<int> getTooltipBounds (const juce::String& text,
                                           juce::Point<int> screenPosition,
                                           juce::Rectangle<int> parentArea) override;
    void drawTooltip (juce::Graphics& graphics, const juce::String& text, int width, int height) override;

private:
    void applyPalette();

    const Palette* palette_ = &Palette::day();
    bool isNight_ = false;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (BenchLook)
};

} // namespace stopwright
