// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where everything on PartDesk is, and what it paints itself.
#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/PartDesk.h"
#include "Bench/WideText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float leadsWidth = 190.0f;
constexpr float nameHeight = 18.0f;
constexpr float wideHeight = 92.0f;
constexpr float narrow = 540.0f; ///< where two numbers, leads and buttons have no room side by side
constexpr float narrowHeight = 106.0f;
constexpr float buttonRow = 24.0f; ///< with the name, where it is narrow
constexpr float lowHeight = 22.0f; ///< for a hint

} // namespace

bool PartDesk::isNarrow() const
{
    return getWidth() < Lettering::px (narrow);
}

int PartDesk::heightFor (int width, bool isInUse)
{
    return Lettering::px (! isInUse ? lowHeight : width < Lettering::px (narrow) ? narrowHeight : wideHeight);
}

void PartDesk::turnOver()
{
    isTurned_ = ! isTurned_;
    resized();
    repaint();
}

void PartDesk::resized()
{
    const auto area = getLocalBounds().reduced (Lettering::px (10.0f), Lettering::px (4.0f));
    turn_.setVisible (selection_ && isNarrow());
    turn_.setButtonText (isTurned_ ? "Values" : "Leads");
    for (const auto& cell : numbers_)
        cell->setVisible (! hasLeadsOnly());
    for (const auto& row : leads_)
        row->setVisible (! isNarrow() || isTurned_);
    if (! selection_)
        layOutRest (area.withTrimmedTop (Lettering::px (nameHeight)));
    else if (isNarrow())
        layOutNarrow (area);
    else
        layOutWide (area);
}

void PartDesk::layOutRest (juce::Rectangle<int> area)
{
    const int cellWidth = Lettering::px (PartCell::width);
    for (const auto& cell : rest_)
    {
        const bool fits = area.getWidth() >= cellWidth;
        cell->setVisible (fits);
        if (fits)
            cell->setBounds (area.removeFromLeft (cellWidth).withHeight (Lettering::px (PartCell::height)));
    }
}

/// Numbers under the name, then the leads, then what can be done with the part.
void PartDesk::layOutWide (juce::Rectangle<int> area)
{
    const auto whole = area;
    area.removeFromTop (Lettering::px (nameHeight));
    for (const auto& cell : numbers_)
        cell->setBounds (
            area.removeFromLeft (Lettering::px (PartCell::width)).withHeight (Lettering::px (PartCell::height)));
    auto buttons = area.removeFromRight (std::max (Lettering::widthOf (Lettering::body(), rename_.getButtonText()),
                                                   Lettering::widthOf (Lettering::body(), remove_.getButtonText()))
                                         + Lettering::px (20.0f));
    rename_.setBounds (buttons.removeFromTop (Lettering::px (28.0f)));
    buttons.removeFromTop (Lettering::px (5.0f));
    remove_.setBounds (buttons.removeFromTop (Lettering::px (28.0f)));
    area.removeFromRight (Lettering::px (8.0f));
    auto rows = area.removeFromRight (std::min (area.getWidth(), Lettering::px (leadsWidth))).withTop (whole.getY());
    for (const auto& row : leads_)
    {
        row->setBounds (rows.removeFromTop (Lettering::px (LeadRow::height)));
        rows.removeFromTop (Lettering::px (2.0f));
    }
    nameArea_ = whole.withHeight (Lettering::px (nameHeight)).withRight (rows.getX());
}

/// What can be done with the part stands beside its name, and under them numbers or leads, these in two columns.
void PartDesk::layOutNarrow (juce::Rectangle<int> area)
{
    nameArea_ = area.removeFromTop (Lettering::px (buttonRow));
    for (auto* button : { &remove_, &rename_, &turn_ })
    {
        const int width = Lettering::widthOf (Lettering::body(), button->getButtonText()) + Lettering::px (12.0f);
        button->setBounds (nameArea_.removeFromRight (width));
        nameArea_.removeFromRight (Lettering::px (4.0f));
    }
    area.removeFromTop (Lettering::px (2.0f));
    auto cells = area;
    for (const auto& cell : numbers_)
        cell->setBounds (
            cells.removeFromLeft (Lettering::px (PartCell::width)).withHeight (Lettering::px (PartCell::height)));
    const int columnWidth = (area.getWidth() - Lettering::px (8.0f)) / 2;
    const int rowHeight = Lettering::px (LeadRow::height + 2.0f);
    for (std::size_t lead = 0; lead < leads_.size(); ++lead)
    {
        const int column = static_cast<int> (lead % 2);
        const int row = static_cast<int> (lead / 2);
        leads_[lead]->setBounds (area.getX() + column * (columnWidth + Lettering::px (8.0f)),
                                 area.getY() + row * rowHeight, columnWidth, Lettering::px (LeadRow::height));
    }
}

void PartDesk::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.hairline);
    graphics.drawHorizontalLine (0, 0.0f, static_cast<float> (getWidth()));
    const auto line =
        getLocalBounds().reduced (Lettering::px (10.0f), Lettering::px (4.0f)).withHeight (Lettering::px (nameHeight));
    graphics.setColour (colours.faintInk);
    if (! session_.isOpen())
        return;
    if (! selection_)
    {
        const auto hint = rest_.empty() ? juce::String ("Drag a ring to turn its part. Click a wire for the probe.")
                                        : juce::String ("AT REST, EVERY KEY UP");
        Lettering::draw (graphics, *this, hint, Lettering::small(), line);
        return;
    }
    const auto* const part = selection_->isTap ? nullptr : findPart (session_.card(), selection_->name);
    const auto kind = selection_->isTap ? std::string_view ("tap")
                      : part != nullptr ? kindName (part->value)
                                        : std::string_view();
    const auto words = fromUtf8 (selection_->name) + ", " + juce::String (kind.data(), kind.size());
    Lettering::draw (graphics, *this, Lettering::fitted (Lettering::small(), words, nameArea_.getWidth()),
                     Lettering::small(), nameArea_);
}

} // namespace stopwright
