// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/StopPlacePanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/ChangeList.h"
#include "Organ/RailEdit.h"
#include "Sheet/ReadingWords.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr const char* open = "open";
constexpr const char* grounded = "grounded";
constexpr int shownEffects = 3;
constexpr float lineHeight = 16.0f;
constexpr double limitDb = 0.5; ///< common practice: what a neighbour may change without being heard to

juce::String stepText (double db, const juce::String& unit)
{
    if (std::abs (db) < 0.05)
        return "equal in" + unit;
    return juce::String (std::abs (db), 1) + unit + (db > 0.0 ? " louder" : " softer");
}

/// A stop of the same division to begin with: the one next to it on the rail.
std::string firstReference (const Instrument& instrument, const StopTablet& stop)
{
    for (const auto& other : instrument.stops)
        if (other.name != stop.name && other.division == stop.division && ! other.cardFile.empty()
            && ! other.bus.empty())
            return other.name;
    return {};
}

} // namespace

StopPlacePanel::StopPlacePanel (BenchSession& session, const Series& series)
    : session_ (session),
      series_ (series),
      bus_ ("bus",
            "Mixing bus: the wire on which stops meet before a preamp. Another choice moves the stop in hand there, "
            "and stands in the list of changes.",
            "mixing bus"),
      retired_ ("retired",
                "What the tablet leaves on the bus when it is retired: its mixing resistor open, so that the "
                "others grow louder on a passive bus, or grounded, so that they stay as they are.",
                "retired grounded"),
      neighbour_ ("against",
                  "The stop whose level the one in hand is held against, over the keys that both have.",
                  "stop in hand")
{
    setTitle ("Place on the rail");
    setTooltip (
        "How loud the stop in hand is against the stop chosen here, and by how much the others on its bus change when "
        "it is drawn. (!) marks what is heard to change: more than 0.5 dB.");
    changes_.setTooltip (
        "What is otherwise than it was found at the organ, and the way back. Counted is what was altered at "
        "the tablets (bus, mixing resistor, retired, polarity, keyboard, card) and where taps are taken from. Work on a card "
        "is not: parts that were turned, added or soldered elsewhere, and levels. Undo goes back over that, Save keeps it.");
    changes_.onClick = [this]
    {
        if (onChanges)
            onChanges();
    };
    bus_.onChoose = [this] (const std::string& bus) { moveTo (bus); };
    retired_.onChoose = [this] (const std::string& words) { retireAs (words); };
    neighbour_.onChoose = [this] (const std::string& tablet)
    {
        reference_ = tablet;
        forget();
        work();
    };
    for (juce::Component* child : std::initializer_list<juce::Component*> { &bus_, &retired_, &neighbour_, &changes_ })
        addAndMakeVisible (child);
    session_.addListener (*this);
    rebuild();
}

StopPlacePanel::~StopPlacePanel()
{
    session_.removeListener (*this);
}

void StopPlacePanel::sessionChanged (BenchSession::Change change)
{
    using Change = BenchSession::Change;
    if (change == Change::saved)
        return;
    if (change == Change::document || change == Change::stop)
        forget();
    if (change == Change::document || change == Change::stop || change == Change::rail)
    {
        rebuild();
        return;
    }
    if (mixing_ != nullptr)
        mixing_->refresh();
    if (change != Change::values && change != Change::registration)
        countChanges();
    work();
}

void StopPlacePanel::rebuild()
{
    const auto* const stop = session_.document().stopInHand();
    if (stop == nullptr || stop->bus.empty())
        mixing_.reset();
    else if (mixing_ == nullptr || mixing_->knob().name != stop->name)
    {
        mixing_ = std::make_unique<KnobCell> (
            session_, CardKnob { CardKnob::Place::mixing, stop->name, KnobKind::value }, series_);
        addAndMakeVisible (*mixing_);
    }
    else
        mixing_->refresh();
    fillChoices();
    countChanges();
    resized();
    work();
}

void StopPlacePanel::fillChoices()
{
    const auto& document = session_.document();
    const auto* const stop = document.stopInHand();
    if (stop == nullptr)
        return;
    std::vector<std::string> buses;
    buses.reserve (document.instrument->mixingBuses.size());
    for (const auto& bus : document.instrument->mixingBuses)
        buses.push_back (bus.name);
    bus_.fill (buses, stop->bus.empty() ? "none" : stop->bus);
    retired_.fill ({ open, grounded }, stop->whenRetired == WhenRetired::open ? open : grounded);

    std::vector<std::string> others;
    for (const auto& other : document.instrument->stops)
        if (other.name != stop->name && ! other.cardFile.empty())
            others.push_back (other.name);
    if (std::ranges::find (others, reference_) == others.end())
        reference_ = firstReference (*document.instrument, *stop);
    neighbour_.fill (others, reference_);
}

void StopPlacePanel::moveTo (const std::string& bus)
{
    const auto* const stop = session_.document().stopInHand();
    if (stop == nullptr)
        return;
    session_.attempt (
        [&, name = stop->name]
        {
            session_.edit (name + " to " + bus, [&] (BenchWork& work)
                           { work.instrument = moveStopToBus (std::move (*work.instrument), name, bus); });
        });
}

void StopPlacePanel::retireAs (const std::string& words)
{
    const auto* const stop = session_.document().stopInHand();
    if (stop == nullptr)
        return;
    const auto how = words == open ? WhenRetired::open : WhenRetired::grounded;
    session_.attempt (
        [&, name = stop->name]
        {
            session_.edit (name + " retired " + words, [&] (BenchWork& work)
                           { work.instrument = setRetired (std::move (*work.instrument), name, how); });
        });
}

void StopPlacePanel::countChanges()
{
    const auto& instrument = session_.document().instrument;
    const int count = instrument ? static_cast<int> (changeList (*instrument, session_.cardsInWork()).size()) : 0;
    changes_.setButtonText (count == 0   ? "As found"
                            : count == 1 ? "1 change at the organ"
                                         : juce::String (count) + " changes at the organ");
    changes_.setEnabled (count > 0);
}

/// What was worked out, or is being worked out, is of something else.
void StopPlacePanel::forget()
{
    place_.reset();
    ++round_;
    repaint();
}

/// The numbers of what is heard, worked out elsewhere. While a hand turns something, answers that are late by a step are
/// better than none, so that only those of another round are dropped.
void StopPlacePanel::work()
{
    const auto& document = session_.document();
    const auto* const stop = document.stopInHand();
    if (stop == nullptr)
        return;
    std::optional<std::size_t> reference;
    const auto& stops = document.instrument->stops;
    if (const auto found = std::ranges::find (stops, reference_, &StopTablet::name); found != stops.end())
        reference = static_cast<std::size_t> (found - stops.begin());
    task_.run (
        [this, round = round_, instrument = *document.instrument, cards = session_.cardsThatSound(),
         index = static_cast<std::size_t> (document.stopIndex), reference] (const IsUnwanted&) -> std::function<void()>
        {
            return [this, round, place = stopPlaceOf (instrument, cards, index, reference)]
            {
                if (round != round_)
                    return;
                place_ = place;
                repaint();
            };
        });
}

juce::StringArray StopPlacePanel::lines() const
{
    if (! place_)
        return { "working out its level ..." };
    if (! place_->refusal.empty())
        return { fromUtf8 (place_->refusal) };
    juce::StringArray lines;
    if (place_->weightedDb && place_->rmsDb)
    {
        lines.add (stepText (*place_->weightedDb, " dB(A)"));
        lines.add (stepText (*place_->rmsDb, " dB rms"));
    }
    if (place_->effects.empty())
        lines.add ("No other stop on this bus.");
    else if (std::abs (place_->effects.front().compassDb) < 0.005)
        lines.add ("The others feel nothing of it.");
    else
        for (int index = 0; index < std::min (shownEffects, static_cast<int> (place_->effects.size())); ++index)
        {
            const auto& felt = place_->effects[static_cast<std::size_t> (index)];
            lines.add (fromUtf8 (felt.stop) + " " + fromUtf8 (signedText (felt.compassDb, 2)) + " dB"
                       + (std::abs (felt.compassDb) > limitDb ? " (!)" : ""));
        }
    return lines;
}

void StopPlacePanel::resized()
{
    auto area = getLocalBounds().reduced (Lettering::px (6.0f), Lettering::px (8.0f));
    title_ = area.removeFromTop (Lettering::px (20.0f));
    auto bottom = area.removeFromBottom (Lettering::px (28.0f));
    changes_.setBounds (bottom);
    auto knob = area.removeFromTop (Lettering::px (PartCell::height));
    if (mixing_ != nullptr)
        mixing_->setBounds (knob.removeFromLeft (Lettering::px (PartCell::width)));
    for (auto* row : { &bus_, &retired_, &neighbour_ })
        row->setBounds (area.removeFromTop (Lettering::px (LeadRow::height)));
    texts_ = area.withTrimmedTop (Lettering::px (2.0f));
}

void StopPlacePanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    const auto* const stop = session_.document().stopInHand();
    if (stop == nullptr)
        return;
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, "On the rail", Lettering::strong(), title_);
    graphics.setColour (colours.faintInk);
    auto area = texts_;
    for (const auto& line : lines())
    {
        auto row = area.removeFromTop (Lettering::px (lineHeight));
        if (row.getHeight() < Lettering::px (lineHeight))
            break;
        if (Lettering::widthOf (Lettering::small(), line) <= row.getWidth())
            Lettering::draw (graphics, *this, line, Lettering::small(), row);
        else
            graphics.drawFittedText (line, row.withBottom (texts_.getBottom()), juce::Justification::topLeft, 4);
    }
}

} // namespace stopwright
