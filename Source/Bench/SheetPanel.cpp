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

    view_.onSelect = [this] { followSelection(); };
    view_.onDesk = [this]
    {
        showInHand();
        desk_.takeFocus();
    };
    view_.onRename = [this] { beginRenaming(); };
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
    tellTitle();
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
    tellTitle();
    if (change == Change::values || change == Change::saved || change == Change::registration || change == Change::rail)
        return;
    fillProbe();
    resized();
    if (onProbe)
        onProbe (view_.probe());
}

bool SheetPanel::isRetired() const
{
    const auto* const stop = session_.document().stopInHand();
    return stop != nullptr && ! stop->drawn;
}

void SheetPanel::beginRenaming()
{
    showInHand();
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
        sentences.add (
            "Until then the last network that could be computed sounds on; where there was none, the stop is silent.");
    return sentences.joinIntoString (" ");
}

KnobCell* SheetPanel::findCell (const CardKnob& knob) const
{
    const bool isTap = knob.place == CardKnob::Place::tapLevel;
    if (auto* const cell = dynamic_cast<KnobCell*> (view_.findCell ({ isTap, knob.name }));
        cell != nullptr && cell->knob() == knob)
        return cell;
    return desk_.findCell (knob);
}

} // namespace stopwright
