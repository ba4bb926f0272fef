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
constexpr std::array retiredWords { "retired: not heard", "retired" }; ///< the longest that has room
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

    view_.onSelect = [this] { desk_.show (view_.selection()); };
    view_.onDesk = [this] { desk_.takeFocus(); };
    view_.onRename = [this] { desk_.beginRenaming(); };
    view_.onResize = [this] {
        view_.layOut ({ viewport_.getMaximumVisibleWidth(), viewport_.getMaximumVisibleHeight() });
    };
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
    session_.addListener (*this);
    fillProbe();
    tellTitle();
}

SheetPanel::~SheetPanel()
{
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

    area.removeFromTop (space);
    auto second = area.removeFromTop (row);
    const int probeLabelWidth = Lettering::widthOf (Lettering::body(), "Probe") + space;
    const int roomForProbe = second.getWidth() - probeLabelWidth - 2 * space - trials_.leastWidth();
    probe_.setBounds (second.removeFromRight (
        std::clamp (roomForProbe, Lettering::px (narrowestProbe), Lettering::px (widestProbe))));
    probeLabel_ = second.removeFromRight (probeLabelWidth);
    trials_.setBounds (second.withTrimmedRight (2 * space));
    area.removeFromTop (space);

    faultArea_ = area.removeFromTop (faultHeight (area.getWidth()));
    desk_.setBounds (area.removeFromBottom (Lettering::px (PartDesk::height))
                         .expanded (Lettering::px (margin), 0)
                         .withBottom (getHeight() - 1));
    viewport_.setScrollBarThickness (Lettering::px (12.0f));
    viewport_.setBounds (area);
    view_.layOut ({ area.getWidth(), area.getHeight() });
    repaint();
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
