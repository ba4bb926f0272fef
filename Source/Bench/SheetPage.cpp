// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SheetPage.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float controlsGap = 8.0f;

} // namespace

SheetPage::SheetPage (const juce::String& heading,
                      const juce::String& text,
                      std::vector<Choice> choices,
                      std::unique_ptr<juce::Component> controls,
                      int controlsHeight)
    : heading_ (heading),
      controls_ (std::move (controls)),
      controlsHeight_ (controlsHeight),
      choices_ (std::move (choices))
{
    setTitle (heading);
    setFocusContainerType (FocusContainerType::keyboardFocusContainer);

    text_.setMultiLine (true, true);
    text_.setReadOnly (true);
    text_.setCaretVisible (false);
    text_.setTitle (heading);
    text_.setFont (Lettering::body());
    text_.setText (text, juce::dontSendNotification);
    addAndMakeVisible (text_);
    if (controls_ != nullptr)
        addAndMakeVisible (*controls_);

    for (std::size_t index = 0; index < choices_.size(); ++index)
    {
        auto& button = *buttons_.emplace_back (std::make_unique<juce::TextButton> (choices_[index].label));
        button.onClick = [this, index] { choose (index); };
        addAndMakeVisible (button);
    }
}

void SheetPage::takeFocus()
{
    if (isShowing() && (first_ != nullptr || ! buttons_.empty()))
        (first_ != nullptr ? first_ : buttons_.front().get())->grabKeyboardFocus();
}

void SheetPage::choose (std::size_t index)
{
    // The action usually takes this page away: nothing of it may be touched afterwards.
    const auto action = choices_[index].action;
    juce::MessageManager::callAsync (action);
}

bool SheetPage::keyPressed (const juce::KeyPress& key)
{
    if (key.isKeyCode (juce::KeyPress::tabKey))
        return false; // the framework leads on to the next control of the page
    if (key == juce::KeyPress::escapeKey && (isClosedByEscape_ || choices_.size() > 1))
        choose (choices_.size() - 1);
    return true; // what a page does not know must not reach the bench behind it
}

void SheetPage::lookAndFeelChanged()
{
    text_.applyFontToAllText (Lettering::body());
    text_.applyColourToAllText (BenchLook::paletteOf (*this).ink);
}

int SheetPage::textHeight (int width) const
{
    juce::AttributedString attributed;
    attributed.append (text_.getText(), Lettering::body());
    juce::TextLayout layout;
    layout.createLayout (attributed, static_cast<float> (width - Lettering::px (24.0f)));
    return static_cast<int> (layout.getHeight()) + Lettering::px (26.0f);
}

juce::Rectangle<int> SheetPage::sheetArea() const
{
    const int width = std::min (getWidth() - Lettering::px (32.0f), Lettering::px (760.0f));
    const int wanted = Lettering::px (16.0f + 34.0f + 16.0f + 36.0f + 16.0f)
                       + textHeight (width - Lettering::px (40.0f)) + controlsHeight_
                       + (controls_ != nullptr ? Lettering::px (controlsGap) : 0);
    return getLocalBounds().withSizeKeepingCentre (width, std::min (getHeight() - Lettering::px (24.0f), wanted));
}

void SheetPage::resized()
{
    auto area = sheetArea().reduced (Lettering::px (20.0f), Lettering::px (16.0f));
    area.removeFromTop (Lettering::px (34.0f));
    auto row = area.removeFromBottom (Lettering::px (36.0f));
    for (auto& button : buttons_)
    {
        const int width = Lettering::widthOf (Lettering::body(), button->getButtonText()) + Lettering::px (32.0f);
        button->setBounds (row.removeFromRight (width));
        row.removeFromRight (Lettering::px (10.0f));
    }
    area.removeFromBottom (Lettering::px (12.0f));
    if (controls_ != nullptr)
    {
        controls_->setBounds (area.removeFromBottom (std::min (controlsHeight_, area.getHeight())));
        area.removeFromBottom (Lettering::px (controlsGap));
    }
    text_.setBounds (area);
}

void SheetPage::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.fillAll (colours.paper.withAlpha (isListeningOnly_ ? 1.0f : 0.86f));
    const auto sheet = sheetArea();
    graphics.setColour (colours.sheet);
    graphics.fillRect (sheet);
    graphics.setColour (colours.ink);
    graphics.drawRect (sheet, 2);
    graphics.drawRect (sheet.reduced (Lettering::px (5.0f)), 1);
    auto area = sheet.reduced (Lettering::px (20.0f), Lettering::px (14.0f));
    Lettering::draw (graphics, *this, heading_, Lettering::title(), area.removeFromTop (Lettering::px (30.0f)));
}

} // namespace stopwright
