// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/PartDesk.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/PartTerms.h"
#include "Bench/PartWords.h"
#include "Bench/WideText.h"
#include "Organ/CardLead.h"

#include <algorithm>

namespace stopwright
{

PartDesk::PartDesk (BenchSession& session, const Series& series) : session_ (session), series_ (series)
{
    setTitle ("Part in hand");
    rename_.setTooltip ("Gives the part in hand another name (F2).");
    remove_.setTooltip ("Takes the part in hand off the card (Delete). Undo brings it back.");
    rename_.onClick = [this] { beginRenaming(); };
    remove_.onClick = [this]
    {
        if (onRemove)
            onRemove();
    };
    turn_.setTooltip ("Shows which node each lead goes to in the place of the numbers, or the numbers again.");
    turn_.onClick = [this] { turnOver(); };
    addChildComponent (turn_);
    addChildComponent (rename_);
    addChildComponent (remove_);
    session_.addListener (*this);
    rebuild();
}

PartDesk::~PartDesk()
{
    session_.removeListener (*this);
}

void PartDesk::sessionChanged (BenchSession::Change change)
{
    using Change = BenchSession::Change;
    if (change == Change::document || change == Change::stop || change == Change::network || change == Change::trial)
        rebuild();
    else
        for (const auto& cell : numbers_)
            cell->refresh();
    if (selection_ || change != Change::values)
        return;
    const auto readings = restReadingsOf (session_.card());
    for (std::size_t index = 0; index < rest_.size(); ++index)
        rest_[index]->show (index < readings.size() ? readings[index]
                                                    : RestReading { rest_[index]->reading().name, "not found", {} });
}

void PartDesk::show (const std::optional<Selection>& selection)
{
    if (selection_ == selection)
        return;
    selection_ = selection;
    isTurned_ = false; // what is turned must be seen
    rebuild();
}

void PartDesk::addNumbers()
{
    for (const auto& knob : knobsOf (session_.card()))
    {
        if (knob.name != selection_->name || (knob.place == CardKnob::Place::tapLevel) != selection_->isTap)
            continue;
        numbers_.push_back (std::make_unique<KnobCell> (session_, knob, series_));
        addAndMakeVisible (*numbers_.back());
    }
}

std::vector<std::string> PartDesk::nodeNames() const
{
    auto names = nodesOf (session_.card());
    if (std::ranges::find (names, "0") == names.end())
        names.emplace_back ("0");
    return names;
}

void PartDesk::addTapRows (const Tap& tap)
{
    const auto& instrument = session_.document().instrument;
    if (instrument && ! instrument->keyedBuses.empty())
    {
        auto row = std::make_unique<LeadRow> ("from",
                                              "Keyed bus: the keyed wave of the organ that this tap is taken from. "
                                              "Another choice takes its wave, footage, level and resistance, and "
                                              "stands in the list of changes.",
                                              "keyed bus");
        std::vector<std::string> names;
        names.reserve (instrument->keyedBuses.size());
        for (const auto& bus : instrument->keyedBuses)
            names.push_back (bus.name);
        const auto* const source = findKeyedBus (instrument->keyedBuses, tap.wave, tap.footage);
        row->fill (names, source != nullptr ? source->name : PartWords::tapLine (tap).toStdString());
        row->onChoose = [this] (const std::string& bus) { takeFrom (bus); };
        leads_.push_back (std::move (row));
    }
    auto row = std::make_unique<LeadRow> ("to node", "The node of the card that the tap is soldered to.", "node");
    row->fill (nodeNames(), tap.node, "a new node");
    row->onChoose = [this] (const std::string& node) { solder (0, node); };
    leads_.push_back (std::move (row));
}

void PartDesk::addLeads()
{
    if (selection_->isTap)
    {
        if (const auto* const tap = findTap (session_.card(), selection_->name))
            addTapRows (*tap);
    }
    else if (const auto* const part = findPart (session_.card(), selection_->name))
    {
        for (std::size_t lead = 0; lead < part->nodes.size(); ++lead)
        {
            auto row = std::make_unique<LeadRow> (PartWords::leadName (part->value, lead),
                                                  "The node of the card that this lead is soldered to.", "node");
            row->fill (nodeNames(), part->nodes[lead], "a new node");
            row->onChoose = [this, lead] (const std::string& node) { solder (lead, node); };
            leads_.push_back (std::move (row));
        }
    }
    for (const auto& row : leads_)
        addAndMakeVisible (*row);
}

void PartDesk::addRest()
{
    for (const auto& reading : restReadingsOf (session_.card()))
    {
        rest_.push_back (std::make_unique<RestCell> (session_, reading));
        addAndMakeVisible (*rest_.back());
    }
}

/// The line with the name, and what has no word of its own, tell of the part in hand.
void PartDesk::teach()
{
    juce::String lesson;
    juce::String term;
    if (selection_ && selection_->isTap)
    {
        const CardKnob level { CardKnob::Place::tapLevel, selection_->name, KnobKind::value };
        lesson = PartWords::lesson (session_.card(), level);
        term = knobTerm (session_.card(), level);
    }
    else if (const auto* const part = selection_ ? findPart (session_.card(), selection_->name) : nullptr)
    {
        lesson = PartWords::lesson (part->value);
        term = partTerm (part->value);
    }
    setTooltip (lesson);
    setTerm (*this, term);
}

void PartDesk::rebuild()
{
    const auto hasFocus = [] (const auto& row) { return row->hasKeyboardFocus (true); };
    const auto lead = static_cast<std::size_t> (std::ranges::find_if (leads_, hasFocus) - leads_.begin());
    const bool hadFocus = lead < leads_.size() || std::ranges::any_of (numbers_, hasFocus);
    if (hasKeyboardFocus (true))
        giveAwayKeyboardFocus(); // else what goes hands it to whatever control comes first
    numbers_.clear();
    leads_.clear();
    rest_.clear();
    const auto& card = session_.card();
    if (selection_
        && (selection_->isTap ? findTap (card, selection_->name) == nullptr
                              : findPart (card, selection_->name) == nullptr))
        selection_.reset();
    if (selection_)
    {
        addNumbers();
        addLeads();
    }
    else
        addRest();
    teach();
    int order = 0; // of the Tab key: numbers, leads, buttons
    for (const auto& cell : numbers_)
        cell->setExplicitFocusOrder (++order);
    for (const auto& row : leads_)
        row->setExplicitFocusOrder (++order);
    turn_.setExplicitFocusOrder (++order);
    rename_.setExplicitFocusOrder (++order);
    remove_.setExplicitFocusOrder (++order);
    rename_.setVisible (selection_.has_value());
    remove_.setVisible (selection_.has_value());
    resized();
    repaint();
    if (hadFocus)
        takeFocusAt (lead);
}

KnobCell* PartDesk::findCell (const CardKnob& knob) const
{
    const auto found = std::ranges::find_if (numbers_, [&] (const auto& cell) { return cell->knob() == knob; });
    return found == numbers_.end() ? nullptr : found->get();
}

} // namespace stopwright
