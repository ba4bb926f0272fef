// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartsPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/PartWords.h"
#include "Bench/SwitchCell.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float margin = 8.0f;
constexpr float scrollBar = 12.0f;
constexpr int leastColumns = 2;
constexpr std::array seriesNames { "E6", "E12", "E24", "E48", "E96" };

} // namespace

PartsPanel::PartsPanel (BenchSession& session) : session_ (session)
{
    setTitle ("Parts of the card");
    setFocusContainerType (FocusContainerType::none);

    seriesLabel_.setText ("Steps", juce::dontSendNotification);
    seriesLabel_.setJustificationType (juce::Justification::centredRight);
    for (std::size_t index = 0; index < seriesNames.size(); ++index)
        seriesBox_.addItem (seriesNames[index], static_cast<int> (index) + 1);
    seriesBox_.setTitle ("Series of preferred values");
    seriesBox_.setTooltip (
        "Preferred values: the series in which parts are made. E12 has twelve to the decade (10 % parts), "
        "E24 twenty-four (5 %), E96 ninety-six (1 %).");
    seriesBox_.onChange = [this]
    {
        setSeries (static_cast<Series> (seriesBox_.getSelectedId() - 1));
        if (onSeriesChosen)
            onSeriesChosen (series_);
    };
    setSeries (Series::e12);

    viewport_.setViewedComponent (&sheet_, false);
    viewport_.setScrollBarsShown (true, false);
    viewport_.setWantsKeyboardFocus (false);
    addAndMakeVisible (seriesLabel_);
    addAndMakeVisible (seriesBox_);
    addAndMakeVisible (viewport_);
    session_.addListener (*this);
    rebuild();
}

PartsPanel::~PartsPanel()
{
    session_.removeListener (*this);
}

void PartsPanel::setSeries (Series series)
{
    series_ = series;
    seriesBox_.setSelectedId (static_cast<int> (series) + 1, juce::dontSendNotification);
    sheet_.repaint();
}

void PartsPanel::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document || change == BenchSession::Change::stop
        || change == BenchSession::Change::network || change == BenchSession::Change::trial)
    {
        rebuild();
        return;
    }
    refreshRest();
    for (auto& group : sheet_.groups)
    {
        for (auto& cell : group.cells)
            cell->refresh();
    }
}

/// Cells stay: one of them may be in the hand of the user.
void PartsPanel::refreshRest()
{
    const auto readings = restReadingsOf (session_.card());
    for (std::size_t index = 0; index < restCells_.size(); ++index)
    {
        auto& cell = *restCells_[index];
        cell.show (index < readings.size() ? readings[index] : RestReading { cell.reading().name, "not found", {} });
    }
}

void PartsPanel::addRest()
{
    for (const auto& reading : restReadingsOf (session_.card()))
    {
        auto cell = std::make_unique<RestCell> (session_, reading);
        restCells_.push_back (cell.get());
        groupOf ("AT REST").cells.push_back (std::move (cell));
    }
}

PartsPanel::Group& PartsPanel::groupOf (const juce::String& heading)
{
    auto& groups = sheet_.groups;
    const auto found =
        std::find_if (groups.begin(), groups.end(), [&] (const Group& group) { return group.heading == heading; });
    return found != groups.end() ? *found : groups.emplace_back (Group { heading, {}, {} });
}

void PartsPanel::addPart (const Part& part)
{
    auto& cells = groupOf (PartWords::heading (part.value)).cells;
    if (std::holds_alternative<Switch> (part.value))
    {
        cells.push_back (std::make_unique<SwitchCell> (session_, part.name));
        return;
    }

    const auto cellsBefore = cells.size();
    for (const auto& knob : knobsOf (session_.card()))
    {
        if (knob.place == CardKnob::Place::part && knob.name == part.name)
            cells.push_back (std::make_unique<KnobCell> (session_, knob, series_));
    }
    if (cells.size() == cellsBefore)
        cells.push_back (std::make_unique<PartCell> (session_, part.name));
}

void PartsPanel::rebuild()
{
    restCells_.clear();
    sheet_.groups.clear();
    const auto& card = session_.card();
    for (const auto& tap : card.taps)
    {
        groupOf ("TAPS").cells.push_back (std::make_unique<KnobCell> (
            session_, CardKnob { CardKnob::Place::tapLevel, tap.name, KnobKind::value }, series_));
    }
    for (std::size_t kind = 0; kind < std::variant_size_v<PartValue>; ++kind)
    {
        for (const auto& part : card.parts)
        {
            if (part.value.index() == kind)
                addPart (part);
        }
    }

    if (const auto* const stop = session_.document().stopInHand(); stop != nullptr && ! stop->bus.empty())
        groupOf ("MIXING").cells.push_back (std::make_unique<KnobCell> (
            session_, CardKnob { CardKnob::Place::mixing, stop->name, KnobKind::value }, series_));
    addRest();

    for (auto& group : sheet_.groups)
    {
        for (auto& cell : group.cells)
            sheet_.addAndMakeVisible (*cell);
    }
    resized();
    viewport_.setViewPosition (0, 0);
}

int PartsPanel::layOut (int width)
{
    const int cellWidth = Lettering::px (PartCell::width);
    const int cellHeight = Lettering::px (PartCell::height);
    const int headingHeight = Lettering::px (22.0f);
    const int columns = std::max (1, width / cellWidth);
    int shelfTop = 0;
    int shelfRows = 0;
    int column = 0;

    for (auto& group : sheet_.groups)
    {
        // A group that fits beside the last one shares its shelf; a longer one begins a shelf of its own.
        const int count = static_cast<int> (group.cells.size());
        if (column + count > columns || shelfRows > 1)
        {
            shelfTop += shelfRows == 0 ? 0 : headingHeight + shelfRows * cellHeight;
            column = 0;
        }
        shelfRows = (count + columns - 1) / columns;
        group.headingArea = { column * cellWidth + Lettering::px (6.0f), shelfTop,
                              std::min (count, columns) * cellWidth - Lettering::px (8.0f), headingHeight };
        for (int index = 0; index < count; ++index)
        {
            group.cells[static_cast<std::size_t> (index)]->setBounds (
                (column + index % columns) * cellWidth, shelfTop + headingHeight + (index / columns) * cellHeight,
                cellWidth, cellHeight);
        }
        column += std::min (count, columns);
    }
    return shelfTop + headingHeight + shelfRows * cellHeight;
}

int PartsPanel::widthNear (int width)
{
    const int frame = 2 * Lettering::px (margin) + Lettering::px (scrollBar);
    const int cell = Lettering::px (PartCell::width);
    return std::max (leastColumns, (width - frame) / cell) * cell + frame;
}

KnobCell* PartsPanel::findCell (const CardKnob& knob) const
{
    for (const auto& group : sheet_.groups)
    {
        for (const auto& cell : group.cells)
        {
            if (auto* knobCell = dynamic_cast<KnobCell*> (cell.get()); knobCell != nullptr && knobCell->knob() == knob)
                return knobCell;
        }
    }
    return nullptr;
}

void PartsPanel::resized()
{
    auto area = getLocalBounds().reduced (Lettering::px (margin));
    auto top = area.removeFromTop (Lettering::px (28.0f));
    seriesBox_.setBounds (top.removeFromRight (Lettering::px (84.0f)));
    seriesLabel_.setFont (Lettering::body());
    seriesLabel_.setBounds (top.removeFromRight (Lettering::px (58.0f)));
    area.removeFromTop (Lettering::px (4.0f));

    viewport_.setScrollBarThickness (Lettering::px (scrollBar));
    viewport_.setBounds (area);
    const int width = area.getWidth() - viewport_.getScrollBarThickness();
    sheet_.setSize (width, layOut (width));
    sheet_.repaint();
}

void PartsPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    graphics.setColour (BenchLook::paletteOf (*this).ink);
    const auto row = getLocalBounds().reduced (Lettering::px (8.0f)).removeFromTop (Lettering::px (28.0f));
    auto title = row.withTrimmedLeft (Lettering::px (6.0f)).withRight (seriesLabel_.getX());
    Lettering::draw (graphics, *this, "Parts", Lettering::title(),
                     title.removeFromLeft (Lettering::widthOf (Lettering::title(), "Parts")));
    title.removeFromLeft (Lettering::px (12.0f));
    const auto name = juce::String::fromUTF8 (session_.card().name.c_str());
    if (Lettering::widthOf (Lettering::body(), name) <= title.getWidth())
        Lettering::draw (graphics, *this, name, Lettering::body(), title);
    if (! session_.isOpen())
        Lettering::draw (graphics, *this, "No card is open. \"Open\" takes a card or an instrument.", Lettering::body(),
                         getLocalBounds(), juce::Justification::centred);
}

void PartsPanel::Sheet::mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel)
{
    PartCell::noteScroll (event);
    Component::mouseWheelMove (event, wheel);
}

void PartsPanel::Sheet::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    for (const auto& group : groups)
    {
        if (! graphics.clipRegionIntersects (group.headingArea))
            continue;
        graphics.setColour (colours.faintInk);
        Lettering::draw (graphics, *this, group.heading, Lettering::caption(), group.headingArea);
        graphics.setColour (colours.hairline);
        graphics.fillRect (group.headingArea.withTop (group.headingArea.getBottom() - 1));
    }
}

} // namespace stopwright
