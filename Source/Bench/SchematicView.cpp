// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SchematicView.h"

#include "Bench/BenchLook.h"
#include "Bench/BringIntoSight.h"
#include "Bench/KnobCell.h"
#include "Bench/Lettering.h"
#include "Bench/SwitchCell.h"
#include "Sheet/FollowedNode.h"
#include "Sheet/LargerLetters.h"
#include "Sheet/SheetLettering.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr int restMs = 250;
constexpr float smallestScale = 0.66f; ///< of the drawing, at lettering scale 1
constexpr float largestScale = 1.35f;
constexpr float margin = 4.0f;
constexpr float ringAllowance = 1.12f; ///< the value's mark stands out of the ring

} // namespace

SchematicView::SchematicView (BenchSession& session, const Series& series) : session_ (session), series_ (series)
{
    setTitle ("Schematic of the card");
    setFocusContainerType (FocusContainerType::none);
    setMouseClickGrabsKeyboardFocus (false); // a click on a wire takes no part in hand
    session_.addListener (*this);
    rebuild();
}

SchematicView::~SchematicView()
{
    dropCells();
    session_.removeListener (*this);
}

void SchematicView::sessionChanged (BenchSession::Change change)
{
    using Change = BenchSession::Change;
    if (change == Change::document || change == Change::stop)
        probe_.clear(); // a node of another card
    if (change == Change::document || change == Change::stop || change == Change::network || change == Change::trial)
    {
        rebuild();
        return;
    }
    if (change != Change::values && change != Change::saved)
        return;
    letter();
    for (const auto& cell : cells_)
        cell->refresh();
}

/// What a part stands at is lettering of the layout. The sheet stays as it is while a hand turns something on it; where a
/// label has outgrown its place, it is laid out anew when the hand rests.
void SchematicView::letter()
{
    const bool isGood = letterAnew (plain_, session_.card());
    if (! letterAnew (layout_, session_.card()))
    {
        layout_ = withLargerLetters (plain_, letterFactor());
        placeCells();
    }
    if (isGood)
        stopTimer();
    else
        startTimer (restMs);
    redraw();
}

void SchematicView::timerCallback()
{
    if (session_.isGestureOpen())
        return;
    layOutCard();
    redraw();
    if (onResize)
        onResize();
}

void SchematicView::layOutCard()
{
    stopTimer();
    plain_ = layOutSchematic (session_.card());
    layout_ = plain_;
}

void SchematicView::rebuild()
{
    const auto before = std::exchange (plain_, {});
    layOutCard();
    if (! probe_.empty())
        probe_ = followedNode (before, layout_, probe_);
    if (selection_ && itemOf (*selection_) == nullptr)
        selection_.reset();
    const bool hadFocus = hasKeyboardFocus (true) && ! nameEditor_.isOpen();
    if (hadFocus)
        giveAwayKeyboardFocus(); // else what goes hands it on, and the last of them to whatever control comes first
    dropCells();
    addCells();
    redraw();
    if (onResize)
        onResize();
    placeCells();
    addHandles();
    if (hadFocus && selection_)
        takeHold (*selection_);
    if (onSelect)
        onSelect();
}

/// One that goes hands the keyboard to its neighbour, which must not be taken for a choice.
void SchematicView::dropCells()
{
    for (const auto& cell : cells_)
        cell->onFocus = {};
    handles_.clear();
    cells_.clear();
    cellNames_.clear();
}

void SchematicView::redraw()
{
    SchematicStyle style;
    style.markedNode = probe_;
    drawing_ = drawSchematic (session_.card(), layout_, style);
    repaint();
}

SchematicView::Selection SchematicView::selectionOf (const SheetItem& item) const
{
    return { item.kind == SheetItemKind::tap, item.name };
}

std::unique_ptr<PartCell> SchematicView::makeCell (const SheetItem& item) const
{
    if (item.kind == SheetItemKind::tap)
        return std::make_unique<KnobCell> (session_, CardKnob { CardKnob::Place::tapLevel, item.name, KnobKind::value },
                                           series_);
    const auto& part = session_.card().parts[item.index];
    if (std::holds_alternative<Switch> (part.value))
        return std::make_unique<SwitchCell> (session_, part.name);
    for (const auto& knob : knobsOf (session_.card()))
        if (knob.place == CardKnob::Place::part && knob.name == part.name)
            return std::make_unique<KnobCell> (session_, knob, series_);
    auto cell = std::make_unique<PartCell> (session_, part.name);
    cell->setWantsKeyboardFocus (true);
    return cell;
}

void SchematicView::addCells()
{
    for (const auto& item : layout_.items)
    {
        if (item.kind == SheetItemKind::output)
            continue;
        auto cell = makeCell (item);
        const auto name = selectionOf (item);
        cell->onFocus = [this, name] { select (name); };
        addAndMakeVisible (*cell);
        cells_.push_back (std::move (cell));
        cellNames_.push_back (name);
    }
}

juce::Point<float> SchematicView::toView (DrawingPoint place) const noexcept
{
    return origin_ + juce::Point<float> (static_cast<float> (place.x), static_cast<float> (place.y)) * scale_;
}

DrawingPoint SchematicView::fromView (juce::Point<float> place) const noexcept
{
    const auto at = (place - origin_) / scale_;
    return { at.x, at.y };
}

juce::Rectangle<int> SchematicView::boxInView (const DrawingBox& box) const noexcept
{
    return juce::Rectangle<float> (toView ({ box.x, box.y }), toView ({ box.right(), box.bottom() }))
        .getSmallestIntegerContainer();
}

/// Brings the letters of a sheet that is drawn small to their size.
double SchematicView::letterFactor() const
{
    return static_cast<double> (std::max (1.0f, Lettering::scale() / scale_));
}

void SchematicView::layOut (juce::Point<int> room, juce::Point<int> seen)
{
    const float space = 2.0f * static_cast<float> (Lettering::px (margin));
    const auto width = static_cast<float> (std::max (1.0, layout_.width));
    const auto height = static_cast<float> (std::max (1.0, layout_.height));
    const float fitting =
        std::min ((static_cast<float> (room.x) - space) / width, (static_cast<float> (room.y) - space) / height);
    scale_ = juce::jlimit (smallestScale, largestScale, fitting / Lettering::scale()) * Lettering::scale();
    const juce::Point<int> size (std::max (room.x, static_cast<int> (width * scale_ + space)),
                                 std::max (room.y, static_cast<int> (height * scale_ + space)));
    origin_ = { 0.5f * (static_cast<float> (size.x) - width * scale_),
                0.5f * (static_cast<float> (size.y) - height * scale_) };
    layout_ = withLargerLetters (plain_, letterFactor());
    redraw();
    setSize (std::max (size.x, seen.x), std::max (size.y, seen.y));
    placeCells();
    for (const auto& handle : handles_)
    {
        const auto* const item = selection_ ? itemOf (*selection_) : nullptr;
        if (item != nullptr && handle->lead() < item->terminals.size())
            handle->setBounds (juce::Rectangle<int> (Lettering::px (LeadHandle::side), Lettering::px (LeadHandle::side))
                                   .withCentre (toView (item->terminals[handle->lead()].at).roundToInt()));
    }
}

void SchematicView::placeCells()
{
    for (std::size_t index = 0; index < cells_.size(); ++index)
    {
        const auto* const item = itemOf (cellNames_[index]);
        if (item == nullptr)
            continue;
        const float radius = static_cast<float> (item->ringRadius) * scale_ * ringAllowance;
        const auto ring = juce::Rectangle<float> (2.0f * radius, 2.0f * radius)
                              .withCentre (toView (item->middle))
                              .getSmallestIntegerContainer();
        const auto label = boxInView (item->labelBox);
        const auto bounds = ring.getUnion (label);
        cells_[index]->setBounds (bounds);
        cells_[index]->setPlace ({ ring - bounds.getPosition(), label - bounds.getPosition() });
    }
}

const SheetItem* SchematicView::itemOf (const Selection& selection) const
{
    const auto found = std::ranges::find_if (layout_.items,
                                             [&] (const SheetItem& item)
                                             {
                                                 return item.kind != SheetItemKind::output
                                                        && item.name == selection.name
                                                        && (item.kind == SheetItemKind::tap) == selection.isTap;
                                             });
    return found == layout_.items.end() ? nullptr : &*found;
}

PartCell* SchematicView::findCell (const Selection& selection) const
{
    const auto found = std::ranges::find (cellNames_, selection);
    return found == cellNames_.end() ? nullptr : cells_[static_cast<std::size_t> (found - cellNames_.begin())].get();
}

LeadHandle* SchematicView::findHandle (std::size_t lead) const
{
    const auto found = std::ranges::find_if (handles_, [&] (const auto& handle) { return handle->lead() == lead; });
    return found == handles_.end() ? nullptr : found->get();
}

void SchematicView::showSelection()
{
    const auto* const cell = selection_ ? findCell (*selection_) : nullptr;
    if (cell == nullptr || nameEditor_.isOpen())
        return;
    auto area = cell->getBounds();
    for (const auto& handle : handles_)
        area = area.getUnion (handle->getBounds());
    bringIntoSight (*this, area);
}

void SchematicView::select (const std::optional<Selection>& selection)
{
    if (selection_ == selection)
        return;
    selection_ = selection;
    addHandles();
    repaint();
    if (onSelect)
        onSelect();
}

void SchematicView::takeHold (const Selection& selection)
{
    select (selection);
    if (auto* const cell = findCell (selection); cell != nullptr && cell->isShowing())
        cell->grabKeyboardFocus();
}

} // namespace stopwright
