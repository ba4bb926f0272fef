// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchLook.h"

#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float corner = 2.0f;
constexpr float tooltipWidth = 340.0f;

juce::TextLayout tooltipLayout (const juce::String& text, juce::Colour colour)
{
    juce::AttributedString attributed;
    attributed.setJustification (juce::Justification::topLeft);
    attributed.append (text, Lettering::small(), colour);
    juce::TextLayout layout;
    layout.createLayoutWithBalancedLineLengths (attributed, tooltipWidth * Lettering::scale());
    return layout;
}

} // namespace

BenchLook::BenchLook()
{
    applyPalette();
}

void BenchLook::setNight (bool night)
{
    isNight_ = night;
    palette_ = night ? &Palette::night() : &Palette::day();
    applyPalette();
}

void BenchLook::applyPalette()
{
    const auto& tones = *palette_;
    setColour (juce::ResizableWindow::backgroundColourId, tones.paper);
    setColour (juce::DocumentWindow::textColourId, tones.ink);
    setColour (juce::TextButton::buttonColourId, tones.sheet);
    setColour (juce::TextButton::buttonOnColourId, tones.result);
    setColour (juce::TextButton::textColourOffId, tones.ink);
    setColour (juce::TextButton::textColourOnId, tones.sheet);
    setColour (juce::ToggleButton::textColourId, tones.ink);
    setColour (juce::ComboBox::textColourId, tones.ink);
    setColour (juce::Label::textColourId, tones.ink);
    setColour (juce::PopupMenu::backgroundColourId, tones.sheet);
    setColour (juce::PopupMenu::textColourId, tones.ink);
    setColour (juce::PopupMenu::headerTextColourId, tones.ink);
    setColour (juce::PopupMenu::highlightedBackgroundColourId, tones.result);
    setColour (juce::PopupMenu::highlightedTextColourId, tones.sheet);
    setColour (juce::TextEditor::backgroundColourId, tones.sheet);
    setColour (juce::TextEditor::textColourId, tones.ink);
    setColour (juce::TextEditor::highlightColourId, tones.result.withAlpha (0.35f));
    setColour (juce::TextEditor::highlightedTextColourId, tones.ink);
    setColour (juce::CaretComponent::caretColourId, tones.ink);
    setColour (juce::ListBox::backgroundColourId, tones.sheet);
    setColour (juce::AlertWindow::backgroundColourId, tones.sheet);
    setColour (juce::AlertWindow::textColourId, tones.ink);
    setColour (juce::FileChooserDialogBox::titleTextColourId, tones.ink);
    setColour (juce::FileBrowserComponent::currentPathBoxBackgroundColourId, tones.sheet);
    setColour (juce::FileBrowserComponent::currentPathBoxTextColourId, tones.ink);
    setColour (juce::FileBrowserComponent::currentPathBoxArrowColourId, tones.ink);
    setColour (juce::FileBrowserComponent::filenameBoxBackgroundColourId, tones.sheet);
    setColour (juce::FileBrowserComponent::filenameBoxTextColourId, tones.ink);
    setColour (juce::DirectoryContentsDisplayComponent::textColourId, tones.ink);
    setColour (juce::DirectoryContentsDisplayComponent::highlightColourId, tones.source);
    setColour (juce::DirectoryContentsDisplayComponent::highlightedTextColourId, tones.ink);
}

const Palette& BenchLook::paletteOf (const juce::Component& component)
{
    const auto* look = dynamic_cast<const BenchLook*> (&component.getLookAndFeel());
    return look != nullptr ? look->palette() : Palette::day();
}

void BenchLook::drawFocusRing (juce::Graphics& graphics,
                               const juce::Component& component,
                               juce::Rectangle<float> bounds)
{
    const auto& tones = paletteOf (component);
    graphics.setColour (tones.focus);
    graphics.drawRoundedRectangle (bounds.reduced (1.0f), corner + 1.0f, 2.0f);
    graphics.setColour (tones.ink);
    graphics.drawRoundedRectangle (bounds.reduced (2.5f), corner, 1.0f);
}

void BenchLook::drawSheet (juce::Graphics& graphics, const juce::Component& component)
{
    const auto& tones = paletteOf (component);
    graphics.setColour (tones.sheet);
    graphics.fillRect (component.getLocalBounds());
    graphics.setColour (tones.hairline);
    graphics.drawRect (component.getLocalBounds(), 1);
}

void BenchLook::drawButtonBackground (juce::Graphics& graphics,
                                      juce::Button& button,
                                      const juce::Colour&,
                                      bool isHighlighted,
                                      bool isDown)
{
    const auto& tones = palette();
    const auto bounds = button.getLocalBounds().toFloat().reduced (0.5f);
    const bool isOn = button.getToggleState();
    graphics.setColour (isOn ? tones.result : isDown || isHighlighted ? tones.grid : tones.sheet);
    graphics.fillRoundedRectangle (bounds, corner);
    graphics.setColour (button.isEnabled() ? tones.faintInk : tones.hairline);
    graphics.drawRoundedRectangle (bounds, corner, isDown ? 2.0f : 1.0f);
    if (button.hasKeyboardFocus (false))
        drawFocusRing (graphics, button, button.getLocalBounds().toFloat());
}

void BenchLook::drawButtonText (juce::Graphics& graphics, juce::TextButton& button, bool, bool)
{
    const auto& tones = palette();
    graphics.setColour (! button.isEnabled()      ? tones.faintInk.withAlpha (0.55f)
                        : button.getToggleState() ? tones.sheet
                                                  : tones.ink);
    Lettering::draw (graphics, button, button.getButtonText(), Lettering::body(), button.getLocalBounds(),
                     juce::Justification::centred);
}

juce::Font BenchLook::getTextButtonFont (juce::TextButton&, int)
{
    return Lettering::body();
}

void BenchLook::drawToggleButton (juce::Graphics& graphics, juce::ToggleButton& button, bool, bool)
{
    const auto& tones = palette();
    auto area = button.getLocalBounds();
    const auto side = Lettering::px (15.0f);
    const auto box = area.removeFromLeft (side + Lettering::px (8.0f)).withSizeKeepingCentre (side, side).toFloat();

    graphics.setColour (tones.ink);
    graphics.drawRect (box, 1.2f);
    if (button.getToggleState())
    {
        const auto mark = box.reduced (box.getWidth() * 0.22f);
        graphics.drawLine ({ mark.getTopLeft(), mark.getBottomRight() }, 2.0f);
        graphics.drawLine ({ mark.getBottomLeft(), mark.getTopRight() }, 2.0f);
    }
    Lettering::draw (graphics, button, button.getButtonText(), Lettering::body(), area);
    if (button.hasKeyboardFocus (false))
        drawFocusRing (graphics, button, button.getLocalBounds().toFloat());
}

void BenchLook::drawComboBox (juce::Graphics& graphics,
                              int width,
                              int height,
                              bool,
                              int,
                              int,
                              int,
                              int,
                              juce::ComboBox& box)
{
    const auto& tones = palette();
    const auto bounds = juce::Rectangle<int> (width, height).toFloat();
    graphics.setColour (tones.sheet);
    graphics.fillRoundedRectangle (bounds.reduced (0.5f), corner);
    graphics.setColour (tones.faintInk);
    graphics.drawRoundedRectangle (bounds.reduced (0.5f), corner, 1.0f);

    const auto unit = Lettering::scale();
    const auto centre = juce::Point<float> (bounds.getRight() - 12.0f * unit, bounds.getCentreY());
    juce::Path arrow;
    arrow.startNewSubPath (centre.translated (-4.5f * unit, -2.0f * unit));
    arrow.lineTo (centre.translated (0.0f, 3.0f * unit));
    arrow.lineTo (centre.translated (4.5f * unit, -2.0f * unit));
    graphics.setColour (tones.ink);
    graphics.strokePath (arrow, juce::PathStrokeType (1.6f));
    if (box.hasKeyboardFocus (false))
        drawFocusRing (graphics, box, bounds);
}

juce::Font BenchLook::getComboBoxFont (juce::ComboBox&)
{
    return Lettering::body();
}

void BenchLook::positionComboBoxText (juce::ComboBox& box, juce::Label& label)
{
    label.setBounds (Lettering::px (4.0f), 0, box.getWidth() - Lettering::px (26.0f), box.getHeight());
    label.setFont (getComboBoxFont (box));
    label.setBorderSize (juce::BorderSize<int> (1, 3, 1, 1));
}

void BenchLook::drawLabel (juce::Graphics& graphics, juce::Label& label)
{
    if (label.isBeingEdited())
        return;
    graphics.setColour (label.findColour (juce::Label::textColourId));
    Lettering::draw (graphics, label, label.getText(), label.getFont(),
                     label.getBorderSize().subtractedFrom (label.getLocalBounds()), label.getJustificationType());
}

juce::PopupMenu::Options BenchLook::getOptionsForComboBoxPopupMenu (juce::ComboBox& box, juce::Label& label)
{
    return LookAndFeel_V4::getOptionsForComboBoxPopupMenu (box, label).withParentComponent (box.getTopLevelComponent());
}

juce::Font BenchLook::getPopupMenuFont()
{
    return Lettering::body();
}

void BenchLook::drawScrollbar (juce::Graphics& graphics,
                               juce::ScrollBar&,
                               int x,
                               int y,
                               int width,
                               int height,
                               bool isVertical,
                               int thumbStart,
                               int thumbSize,
                               bool isOver,
                               bool isDown)
{
    const auto track = juce::Rectangle<int> (x, y, width, height).toFloat();
    const auto thumb = isVertical
                           ? track.withY (static_cast<float> (thumbStart)).withHeight (static_cast<float> (thumbSize))
                           : track.withX (static_cast<float> (thumbStart)).withWidth (static_cast<float> (thumbSize));
    graphics.setColour (palette().grid);
    graphics.fillRect (track);
    graphics.setColour (isOver || isDown ? palette().ink : palette().faintInk);
    graphics.fillRect (thumb.reduced (2.0f));
}

void BenchLook::drawTextEditorOutline (juce::Graphics& graphics, int width, int height, juce::TextEditor& editor)
{
    // What can only be read is no field to fill in.
    const auto bounds = juce::Rectangle<int> (width, height).toFloat();
    graphics.setColour (palette().faintInk);
    if (! editor.isReadOnly())
        graphics.drawRect (bounds, 1.0f);
    if (editor.hasKeyboardFocus (true))
        drawFocusRing (graphics, editor, bounds);
}

juce::Rectangle<int> BenchLook::getTooltipBounds (const juce::String& text,
                                                  juce::Point<int> screenPosition,
                                                  juce::Rectangle<int> parentArea)
{
    const auto layout = tooltipLayout (text, palette().ink);
    const int width = static_cast<int> (layout.getWidth()) + Lettering::px (18.0f);
    const int height = static_cast<int> (layout.getHeight()) + Lettering::px (12.0f);
    return juce::Rectangle<int> (screenPosition.x + 14, screenPosition.y + 16, width, height)
        .constrainedWithin (parentArea);
}

void BenchLook::drawTooltip (juce::Graphics& graphics, const juce::String& text, int width, int height)
{
    const auto bounds = juce::Rectangle<int> (width, height).toFloat();
    graphics.fillAll (palette().sheet);
    graphics.setColour (palette().ink);
    graphics.drawRect (bounds, 1.0f);
    tooltipLayout (text, palette().ink)
        .draw (graphics, bounds.reduced (9.0f * Lettering::scale(), 6.0f * Lettering::scale()));
}

} // namespace stopwright
