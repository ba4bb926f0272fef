// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SheetPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/CardLead.h"

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
constexpr std::array seriesNames { "E6", "E12", "E24", "E48", "E96" };

} // namespace

SheetPanel::SheetPanel (BenchSession& session, TrialMatcher& matcher, TrialBar::Actions trialActions)
    : session_ (session),
      trials_ (session, matcher, std::move (trialActions)),
      view_ (session, series_),
      desk_ (session, series_)
{
    setTitle ("Sheet");
    setFocusContainerType (FocusContainerType::none);
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
    setTerm (seriesBox_, "preferred values");
    setTerm (probe_, "probe");
    setTerm (add_, "card");
    probe_.setTitle ("Probe");
    probe_.setTooltip (
        "Probe: the node whose wave, response and levels the readings show. A click on a wire puts it there. F2 here, or "
        "a double-click on the wire, renames the node.");
    probe_.onChange = [this]
    {
        const auto index = static_cast<std::size_t> (probe_.getSelectedId() - 1);
        view_.setProbe (index > 0 && index <= probeNodes_.size() ? probeNodes_[index - 1] : std::string());
    };
    add_.setTooltip (
        "A part between the node with the probe and common, or a tap from a keyed bus. Then drag its leads to "
        "where they belong.");
    add_.onClick = [this] { showAddMenu(); };

    view_.onSelect = [this]
    {
        desk_.show (view_.selection());
        layOutSheet();
    };
    view_.onDesk = [this] { desk_.takeFocus(); };
    view_.onRename = [this] { desk_.beginRenaming(); };
    view_.onResize = [this] { layOutSheet(); };
    view_.onProbe = [this]
    {
        fillProbe();
        if (onProbe)
            onProbe (view_.probe());
    };
    desk_.onRemove = [this] { view_.removeSelection(); };
    desk_.onRenamed = [this] (const SchematicView::Selection& selection) { view_.takeHold (selection); };
    setSeries (Series::e12);

    viewport_.setViewedComponent (&view_, false);
    viewport_.setWantsKeyboardFocus (false);
    for (juce::Component* child :
         std::initializer_list<juce::Component*> { &add_, &seriesBox_, &trials_, &probe_, &viewport_, &desk_ })
        addAndMakeVisible (child);
    view_.addMouseListener (this, true);
    session_.addListener (*this);
    fillProbe();
}

SheetPanel::~SheetPanel()
{
    view_.removeMouseListener (this);
    session_.removeListener (*this);
}

void SheetPanel::setSeries (Series series)
{
    series_ = series;
    seriesBox_.setSelectedId (static_cast<int> (series) + 1, juce::dontSendNotification);
    view_.repaint();
    desk_.repaint();
}

void SheetPanel::sessionChanged (BenchSession::Change change)
{
    using Change = BenchSession::Change;
    if (change == Change::values || change == Change::saved || change == Change::registration || change == Change::rail)
        return;
    fillProbe();
    resized();
    if (onProbe)
        onProbe (view_.probe());
}

void SheetPanel::beginRenaming()
{
    if (view_.selection() && ! probe_.hasKeyboardFocus (true))
        desk_.beginRenaming();
    else
        view_.beginNodeRenaming();
}

void SheetPanel::fillProbe()
{
    probeNodes_ = nodesOf (session_.card());
    std::erase (probeNodes_, std::string ("0"));
    probe_.clear (juce::dontSendNotification);
    probe_.addItem ("card's output", 1);
    for (std::size_t index = 0; index < probeNodes_.size(); ++index)
        probe_.addItem ("node " + fromUtf8 (probeNodes_[index]), static_cast<int> (index) + 2);
    const auto found = std::ranges::find (probeNodes_, view_.probe());
    probe_.setSelectedId (found == probeNodes_.end() ? 1 : static_cast<int> (found - probeNodes_.begin()) + 2,
                          juce::dontSendNotification);
    probe_.setEnabled (session_.isOpen());
    add_.setEnabled (session_.isOpen());
}

juce::String SheetPanel::faultText() const
{
    juce::StringArray sentences;
    for (const auto& finding : session_.faults())
        sentences.add (fromUtf8 (finding.sentence));
    if (session_.isUnsound())
        sentences.add ("Until then the last network that could be computed sounds on.");
    return sentences.joinIntoString (" ");
}

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

KnobCell* SheetPanel::findCell (const CardKnob& knob) const
{
    const bool isTap = knob.place == CardKnob::Place::tapLevel;
    if (auto* const cell = dynamic_cast<KnobCell*> (view_.findCell ({ isTap, knob.name }));
        cell != nullptr && cell->knob() == knob)
        return cell;
    return desk_.findCell (knob);
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
    view_.showSelection();
}

/// What the desk covered of a part that the mouse took is shown once the hand has let go: later than a second click of a
/// double-click, which must meet the same part.
void SheetPanel::mouseUp (const juce::MouseEvent&)
{
    juce::Timer::callAfterDelay (juce::MouseEvent::getDoubleClickTimeout(),
                                 [safe = SafePointer (this)]
                                 {
                                     if (safe != nullptr)
                                         safe->view_.showSelection();
                                 });
}

void SheetPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.ink);
    auto title = titleArea_;
    Lettering::draw (graphics, *this, "Sheet", Lettering::title(),
                     title.removeFromLeft (Lettering::widthOf (Lettering::title(), "Sheet")));
    title.removeFromLeft (Lettering::px (12.0f));
    const auto name = fromUtf8 (session_.card().name);
    if (Lettering::widthOf (Lettering::body(), name) <= title.getWidth())
        Lettering::draw (graphics, *this, name, Lettering::body(), title);
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
