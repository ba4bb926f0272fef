// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/RailPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/TremulantEdit.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float margin = 8.0f;
constexpr float titleHeight = 28.0f;
constexpr float footHeight = 26.0f;
constexpr float headingHeight = 22.0f;

std::vector<int> allOf (std::size_t count)
{
    std::vector<int> indices;
    for (std::size_t index = 0; index < count; ++index)
        indices.push_back (static_cast<int> (index));
    return indices;
}

} // namespace

RailPanel::RailPanel (BenchSession& session) : session_ (session)
{
    setTitle ("Stops of the instrument");
    setFocusContainerType (FocusContainerType::none);
    retireAll_.setTooltip ("Retires every stop and coupler; what is held goes silent.");
    retireAll_.onClick = [this] { session_.attempt ([this] { session_.retireAll(); }); };
    lamps_.setTooltip (
        "Clipping: a stage was driven against its supply rails or its standing current. A lamp stays lit, in the list "
        "above, until it is clicked; a click here puts out all of them.");
    setTerm (retireAll_, "registration");
    setTerm (lamps_, "clipping");
    lamps_.onClick = [this] { putLampsOut(); };

    viewport_.setViewedComponent (&sheet_, false);
    viewport_.setScrollBarsShown (true, false);
    viewport_.setWantsKeyboardFocus (false);
    addAndMakeVisible (heading_);
    addAndMakeVisible (retireAll_);
    addAndMakeVisible (viewport_);
    addAndMakeVisible (lamps_);
    session_.addListener (*this);
    rebuild();
}

RailPanel::~RailPanel()
{
    session_.removeListener (*this);
}

void RailPanel::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document || change == BenchSession::Change::rail)
    {
        rebuild();
        if (change == BenchSession::Change::document)
            viewport_.setViewPosition (0, 0);
    }
    else if (change == BenchSession::Change::stop || change == BenchSession::Change::registration
             || change == BenchSession::Change::saved)
    {
        refresh();
        resized(); // a line with more to say is taller
    }
}

void RailPanel::show (const Telemetry& telemetry)
{
    if (clips_.take (telemetry.clips))
        refresh();
}

void RailPanel::showEnd()
{
    viewport_.setViewPosition (0, sheet_.getHeight());
}

void RailPanel::putLampsOut()
{
    clips_.putAllOut();
    refresh();
}

void RailPanel::rebuild()
{
    sheet_.lines.clear();
    focusLine_ = 0;
    keepTremulants();
    clips_.watch (session_.processor().engine().clipNames());
    if (const auto& instrument = session_.document().instrument)
    {
        for (const auto& division : instrument->divisions)
        {
            std::vector<int> stops;
            for (std::size_t index = 0; index < instrument->stops.size(); ++index)
            {
                if (instrument->stops[index].division == division.name)
                    stops.push_back (static_cast<int> (index));
            }
            addGroup (fromUtf8 (division.name).toUpperCase(), Kind::stop, stops);
        }
        addGroup ("COUPLERS", Kind::coupler, allOf (instrument->couplers.size()));
        std::vector<int> switches;
        for (std::size_t index = 0; index < instrument->outlets.size(); ++index)
        {
            if (instrument->outlets[index].kind != OutletKind::main)
                switches.push_back (static_cast<int> (index));
        }
        addGroup ("OUTLETS", Kind::outlet, switches);
        addGroup ("CLIPPING", Kind::stage, allOf (static_cast<std::size_t> (clips_.stageCount())));
    }
    focusLine (std::max (0, placeOf (Kind::stop, session_.document().stopIndex)), false);
    refresh();
    resized();
}

/// The knobs of each tremulant that there is; those that stay are left alone.
void RailPanel::keepTremulants()
{
    const auto& instrument = session_.document().instrument;
    std::erase_if (tremulants_, [&] (const auto& row)
                   { return ! instrument || findTremulant (*instrument, row->outlet()) == nullptr; });
    for (const auto& outlet : instrument ? instrument->outlets : std::vector<Outlet>())
    {
        if (outlet.kind != OutletKind::tremulant || findTremulantRow (outlet.name) != nullptr)
            continue;
        tremulants_.push_back (std::make_unique<TremulantRow> (session_, outlet.name));
        sheet_.addAndMakeVisible (*tremulants_.back());
    }
}

TremulantRow* RailPanel::findTremulantRow (const std::string& outlet) const
{
    const auto found = std::ranges::find_if (tremulants_, [&] (const auto& row) { return row->outlet() == outlet; });
    return found == tremulants_.end() ? nullptr : found->get();
}

void RailPanel::addGroup (const juce::String& heading, Kind kind, const std::vector<int>& indices)
{
    for (const int index : indices)
    {
        RailRow::Actions actions { [this, kind, index] { use (kind, index); },
                                   [this, index]
                                   {
                                       if (onTakeInHand && index != session_.document().stopIndex)
                                           onTakeInHand (index);
                                   },
                                   [this] (int lines) { focusLine (focusLine_ + lines, true); },
                                   [this, kind, index] { focusLine (placeOf (kind, index), false); } };
        auto row = std::make_unique<RailRow> (faceOf (kind, index), std::move (actions));
        row->setTooltip (lessonOf (kind, index));
        setTerm (*row, termOf (kind, index));
        sheet_.addAndMakeVisible (*row);
        sheet_.lines.push_back ({ kind,
                                  index,
                                  std::move (row),
                                  index == indices.front() ? heading : juce::String(),
                                  {},
                                  knobsBelow (kind, index) });
    }
}

void RailPanel::refresh()
{
    for (auto& line : sheet_.lines)
        line.row->setFace (faceOf (line.kind, line.index));
    for (const auto& row : tremulants_)
        row->refresh();
    lamps_.setLit (clips_.litCount());
}

int RailPanel::placeOf (Kind kind, int index) const
{
    const auto found = std::ranges::find_if (sheet_.lines, [&] (const Line& line)
                                             { return line.kind == kind && line.index == index; });
    return found == sheet_.lines.end() ? -1 : static_cast<int> (found - sheet_.lines.begin());
}

/// The Tab key stops once in the list, at the line that had the keyboard last; the arrow keys go on from there.
void RailPanel::focusLine (int place, bool isGrabbing)
{
    const int last = static_cast<int> (sheet_.lines.size()) - 1;
    if (last < 0)
        return;
    focusLine_ = std::clamp (place, 0, last);
    for (int index = 0; index <= last; ++index)
        sheet_.lines[static_cast<std::size_t> (index)].row->setWantsKeyboardFocus (index == focusLine_);
    if (isGrabbing)
        sheet_.lines[static_cast<std::size_t> (focusLine_)].row->grabKeyboardFocus();
}

RailRow* RailPanel::findRow (const juce::String& name, RailRow::Sign sign) const
{
    const auto found =
        std::ranges::find_if (sheet_.lines, [&] (const Line& line)
                              { return line.row->face().name == name && line.row->face().sign == sign; });
    return found == sheet_.lines.end() ? nullptr : found->row.get();
}

int RailPanel::layOut (int width)
{
    const int left = Lettering::px (4.0f);
    int top = 0;
    for (auto& line : sheet_.lines)
    {
        if (line.heading.isNotEmpty())
        {
            top += top == 0 ? 0 : Lettering::px (6.0f);
            line.headingArea = { left, top, width - left, Lettering::px (headingHeight) };
            top = line.headingArea.getBottom() + Lettering::px (2.0f);
        }
        line.row->setBounds (0, top, width, line.row->height());
        top += line.row->height();
        if (line.knobs != nullptr)
        {
            line.knobs->setBounds (left, top, width - left, Lettering::px (TremulantRow::height));
            line.knobs->resized();
            top = line.knobs->getBottom();
        }
    }
    return top;
}

void RailPanel::resized()
{
    auto area = getLocalBounds().reduced (Lettering::px (margin));
    auto top = area.removeFromTop (Lettering::px (titleHeight));
    const int button = Lettering::widthOf (Lettering::body(), retireAll_.getButtonText()) + Lettering::px (16.0f);
    retireAll_.setBounds (top.removeFromRight (button));
    heading_.setBounds (top.withTrimmedLeft (Lettering::px (4.0f)));
    area.removeFromTop (Lettering::px (4.0f));
    lamps_.setBounds (area.removeFromBottom (Lettering::px (footHeight)));
    area.removeFromBottom (Lettering::px (6.0f));

    viewport_.setScrollBarThickness (Lettering::px (12.0f));
    viewport_.setBounds (area);
    const int width = area.getWidth() - viewport_.getScrollBarThickness();
    sheet_.setSize (width, layOut (width));
    sheet_.repaint();
}

void RailPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
}

void RailPanel::Sheet::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    for (const auto& line : lines)
    {
        if (line.heading.isEmpty() || ! graphics.clipRegionIntersects (line.headingArea))
            continue;
        graphics.setColour (colours.faintInk);
        Lettering::draw (graphics, *this, line.heading, Lettering::caption(), line.headingArea);
        graphics.setColour (colours.hairline);
        graphics.fillRect (line.headingArea.withTop (line.headingArea.getBottom() - 1));
    }
}

void RailPanel::Sheet::mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel)
{
    PartCell::noteScroll (event);
    Component::mouseWheelMove (event, wheel);
}

} // namespace stopwright
