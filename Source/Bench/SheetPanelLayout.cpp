// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where everything on SheetPanel is, and what it paints itself.
#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/SheetPanel.h"
#include "Bench/WideText.h"

#include <algorithm>
#include <array>

namespace stopwright
{

namespace
{

constexpr float margin = 8.0f;
constexpr float rowHeight = 28.0f;
constexpr float narrowestProbe = 116.0f;
constexpr float widestProbe = 132.0f;
constexpr std::array retiredWords { "retired: not heard", "retired" }; ///< the longest that has room

} // namespace

int SheetPanel::faultHeight (int width) const
{
    const auto text = faultText();
    if (text.isEmpty())
        return 0;
    juce::AttributedString attributed;
    attributed.append (text, Lettering::small());
    juce::TextLayout layout;
    layout.createLayout (attributed, static_cast<float> (width - Lettering::px (28.0f)));
    return std::min (static_cast<int> (layout.getHeight()) + Lettering::px (10.0f), Lettering::px (90.0f));
}

void SheetPanel::resized()
{
    auto area = getLocalBounds().reduced (Lettering::px (margin), Lettering::px (margin));
    const int row = Lettering::px (rowHeight);
    const int space = Lettering::px (6.0f);
    auto top = area.removeFromTop (row);
    seriesBox_.setBounds (top.removeFromRight (Lettering::px (76.0f)));
    seriesLabel_ = top.removeFromRight (Lettering::widthOf (Lettering::body(), "Steps") + space);
    top.removeFromRight (2 * space);
    add_.setBounds (
        top.removeFromRight (Lettering::widthOf (Lettering::body(), add_.getButtonText()) + Lettering::px (22.0f)));
    titleArea_ = top.withTrimmedLeft (space).withTrimmedRight (space);

    area.removeFromTop (Lettering::px (4.0f));
    auto second = area.removeFromTop (row);
    const int probeLabelWidth = Lettering::widthOf (Lettering::body(), "Probe") + space;
    const int roomForProbe = second.getWidth() - probeLabelWidth - 2 * space - trials_.leastWidth();
    probe_.setBounds (second.removeFromRight (
        std::clamp (roomForProbe, Lettering::px (narrowestProbe), Lettering::px (widestProbe))));
    probeLabel_ = second.removeFromRight (probeLabelWidth);
    trials_.setBounds (second.withTrimmedRight (2 * space));
    area.removeFromTop (Lettering::px (4.0f));

    faultArea_ = area.removeFromTop (faultHeight (area.getWidth()));
    sheetArea_ = area;
    viewport_.setScrollBarThickness (Lettering::px (12.0f));
    layOutSheet();
    desk_.resized(); // one whose bounds stayed the same still has to follow the lettering
    repaint();
}

/// The desk is as low as what is on it allows. The schematic is laid out for the room beside the whole desk all the same,
/// so that it stays where it is when a part is taken in hand; where that is too little, more of it is seen without one.
void SheetPanel::layOutSheet()
{
    auto area = sheetArea_;
    const int whole = PartDesk::heightFor (getWidth(), true);
    const int height = PartDesk::heightFor (getWidth(), desk_.isInUse());
    desk_.setBounds (area.removeFromBottom (height).expanded (Lettering::px (margin), 0).withBottom (getHeight() - 1));
    viewport_.setBounds (area);
    view_.layOut ({ area.getWidth(), sheetArea_.getHeight() - whole }, { area.getWidth(), area.getHeight() });
    const juce::Point<int> seen (viewport_.getMaximumVisibleWidth(), viewport_.getMaximumVisibleHeight());
    if (const auto bars = juce::Point<int> (area.getWidth(), area.getHeight()) - seen; ! bars.isOrigin())
        view_.layOut ({ seen.x, sheetArea_.getHeight() - whole - bars.y }, seen);
}

/// Under the mouse nothing may move: neither a drag nor the second click of a double-click may meet anything but the part
/// that the first press met. A desk that would open over it waits for the hand.
void SheetPanel::followSelection()
{
    isHandWaitedFor_ = view_.selection() && juce::ModifierKeys::currentModifiers.isAnyMouseButtonDown();
    if (! isHandWaitedFor_)
        showInHand();
    else if (desk_.isInUse())
        desk_.show (view_.selection());
}

/// The part in hand on its desk, and in sight beside it.
void SheetPanel::showInHand()
{
    isHandWaitedFor_ = false;
    const bool wasInUse = desk_.isInUse();
    desk_.show (view_.selection());
    if (desk_.isInUse() != wasInUse)
        layOutSheet();
    view_.showSelection();
}

/// Later than the second click of a double-click would be.
void SheetPanel::mouseUp (const juce::MouseEvent&)
{
    if (isHandWaitedFor_)
        startTimer (juce::MouseEvent::getDoubleClickTimeout());
}

void SheetPanel::timerCallback()
{
    if (juce::ModifierKeys::currentModifiers.isAnyMouseButtonDown())
        return; // until its next time
    stopTimer();
    if (isHandWaitedFor_)
        showInHand();
}

/// Whose sheet it is, also for who hears the window read out.
void SheetPanel::tellTitle()
{
    const auto name = fromUtf8 (session_.card().name);
    const auto told = isRetired() ? name + ", " + retiredWords.front() : name;
    if (told == getDescription())
        return;
    setDescription (told);
    repaint (titleArea_);
}

/// "Sheet", the card's name, and that it is not heard where that is so: of these the last matters most, the name least, for it
/// stands in the title block too.
void SheetPanel::paintTitle (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto widthOf = [] (const juce::String& text) { return Lettering::widthOf (Lettering::body(), text); };
    auto area = titleArea_;
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, "Sheet", Lettering::title(),
                     area.removeFromLeft (Lettering::widthOf (Lettering::title(), "Sheet")));
    area.removeFromLeft (Lettering::px (12.0f));
    const auto name = fromUtf8 (session_.card().name);
    if (! isRetired())
    {
        if (widthOf (name) <= area.getWidth())
            Lettering::draw (graphics, *this, name, Lettering::body(), area);
        return;
    }
    const auto named = name + ", ";
    for (const bool hasName : { true, false })
        for (const auto* const words : retiredWords)
        {
            const int nameWidth = hasName ? widthOf (named) + Lettering::px (4.0f) : 0;
            if (nameWidth + widthOf (words) > area.getWidth() || (hasName && name.isEmpty()))
                continue;
            if (hasName)
                Lettering::draw (graphics, *this, named, Lettering::body(), area.removeFromLeft (nameWidth));
            graphics.setColour (colours.notice);
            Lettering::draw (graphics, *this, words, Lettering::body(), area);
            return;
        }
}

void SheetPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    paintTitle (graphics);
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, "Steps", Lettering::body(), seriesLabel_);
    Lettering::draw (graphics, *this, "Probe", Lettering::body(), probeLabel_);
    if (! session_.isOpen())
        Lettering::draw (graphics, *this, "No card is open. \"Open\" takes a card or an instrument.", Lettering::body(),
                         viewport_.getBounds(), juce::Justification::centred);
    if (faultArea_.isEmpty())
        return;
    graphics.setColour (colours.notice);
    graphics.fillRect (faultArea_.withWidth (Lettering::px (4.0f)));
    juce::AttributedString text;
    text.append (faultText(), Lettering::small(), colours.ink);
    text.draw (graphics, faultArea_.withTrimmedLeft (Lettering::px (12.0f)).toFloat());
}

} // namespace stopwright
