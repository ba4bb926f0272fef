// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/ChangeList.h"

#include "Circuit/FindingWords.h"
#include "Organ/AlterationWords.h"
#include "Organ/CardItems.h"
#include "Organ/NamedItem.h"
#include "Organ/RailEdit.h"
#include "Organ/Spelling.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

/// Lists what is noted of one tablet or tap and is otherwise now.
class Lister
{
public:
    Lister (std::vector<Alteration>& list, Alteration prototype, std::string owner)
        : list_ (list),
          prototype_ (std::move (prototype)),
          owner_ (std::move (owner))
    {}

    template <typename Value, typename... Rest>
    void note (Alteration::Field field,
               const std::optional<Value>& asFound,
               const Value& asAltered,
               void (*describe) (Alteration&, const std::string&, Ends<Value>, Rest...),
               const Rest&... rest)
    {
        if (! asFound || *asFound == asAltered)
            return;
        auto alteration = prototype_;
        alteration.field = field;
        describe (alteration, owner_, { *asFound, asAltered }, rest...);
        list_.push_back (std::move (alteration));
    }

private:
    std::vector<Alteration>& list_;
    Alteration prototype_;
    std::string owner_;
};

void listStop (const StopTablet& stop, std::vector<Alteration>& list)
{
    if (! stop.asFound)
        return;
    using Field = Alteration::Field;
    const auto& found = *stop.asFound;
    Alteration prototype;
    prototype.tablet = stop.name;
    prototype.where = stop.name;
    prototype.note = found.note;
    Lister lister (list, std::move (prototype), partWords (stop.name));
    lister.note (Field::card, found.cardFile, stop.cardFile, describeCard);
    lister.note (Field::division, found.division, stop.division, describeDivision);
    lister.note (Field::bus, found.bus, stop.bus, describeBus);
    lister.note (Field::mixingOhms, found.mixingOhms, stop.mixingOhms, describeMixing);
    lister.note (Field::polarity, found.polarity, stop.polarity, describePolarity);
    lister.note (Field::whenRetired, found.whenRetired, stop.whenRetired, describeRetired);
}

/// A card, and all who use it.
struct UsedCard
{
    const Card* card = nullptr;
    std::string file;
    std::vector<std::string> users;
};

std::string usersWords (const UsedCard& used)
{
    if (used.users.empty())
        return used.card->name.empty() ? "card" : used.card->name;
    const std::vector<std::string_view> views (used.users.begin(), used.users.end());
    return listedWords (views, "and");
}

void listTaps (const UsedCard& used, std::span<const KeyedBus> keyedBuses, std::vector<Alteration>& list)
{
    using Field = Alteration::Field;
    const auto users = usersWords (used);
    for (const auto& tap : used.card->taps)
    {
        if (! tap.asFound)
            continue;
        const auto& found = *tap.asFound;
        Alteration prototype;
        prototype.tap = tap.name;
        prototype.cardFile = used.file;
        prototype.users = used.users;
        prototype.where = users + ", tap " + tap.name;
        prototype.note = found.note;
        Lister lister (list, std::move (prototype), "tap " + partWords (tap.name) + " of " + partWords (users));
        lister.note (Field::tapSource, found.source, waveSourceOf (tap), describeSource, keyedBuses);
        lister.note (Field::tapNode, found.node, tap.node, describeNode);
        lister.note (Field::tapPolarity, found.polarity, tap.polarity, describePolarity);
    }
}

/// The cards of an instrument, each file once, in the order of their first use.
class CardUses
{
public:
    void add (const std::optional<Card>& card, const std::string& file, const std::string& user)
    {
        if (! card)
            return;
        auto found = std::ranges::find (cards_, file, &UsedCard::file);
        if (found == cards_.end())
            found = cards_.insert (found, { &*card, file, {} });
        found->users.push_back (user);
    }

    const std::vector<UsedCard>& cards() const noexcept { return cards_; }

private:
    std::vector<UsedCard> cards_;
};

/// What it was found as. Fails: Error when it is that.
template <typename Value>
const Value& noted (const std::optional<Value>& asFound, const Alteration& alteration)
{
    if (! asFound)
        throw Error ("The " + alteration.what + " of " + partWords (alteration.where)
                     + " is as it was found already; there is nothing to put back.");
    return *asFound;
}

[[noreturn]] void refuseOther (const Alteration& alteration, std::string_view where)
{
    throw Error ("The " + alteration.what + " of " + partWords (alteration.where) + " is no matter of "
                 + std::string (where) + "; put it back where it stands.");
}

} // namespace

std::vector<Alteration> changeList (const Instrument& instrument)
{
    std::vector<Alteration> list;
    for (const auto& stop : instrument.stops)
        listStop (stop, list);
    return list;
}

std::vector<Alteration> changeList (const Instrument& instrument, const InstrumentCards& cards)
{
    CardUses uses;
    for (std::size_t stop = 0; stop < instrument.stops.size(); ++stop)
        uses.add (cards.ofStops[stop], instrument.stops[stop].cardFile, instrument.stops[stop].name);
    for (std::size_t p = 0; p < instrument.preamps.size(); ++p)
    {
        const auto& preamp = instrument.preamps[p];
        for (std::size_t s = 0; s < preamp.stages.size(); ++s)
            uses.add (cards.ofStages[p][s], preamp.stages[s].cardFile,
                      "stage " + preamp.stages[s].name + " of " + preamp.name);
    }
    auto list = changeList (instrument);
    for (const auto& used : uses.cards())
        listTaps (used, instrument.keyedBuses, list);
    return list;
}

std::vector<Alteration> changeList (const Card& card)
{
    std::vector<Alteration> list;
    listTaps ({ &card, {}, {} }, {}, list);
    return list;
}

Instrument revert (Instrument instrument, const Alteration& alteration)
{
    using Field = Alteration::Field;
    const auto& tablet = alteration.tablet;
    const auto& stop = itemNamed (instrument.stops, "tablet", inThisInstrument, tablet);
    const auto found = stop.asFound.value_or (AsFoundStop());
    switch (alteration.field)
    {
        case Field::bus:
            return moveStopToBus (std::move (instrument), tablet, noted (found.bus, alteration));
        case Field::mixingOhms:
            return setMixing (std::move (instrument), tablet, noted (found.mixingOhms, alteration));
        case Field::whenRetired:
            return setRetired (std::move (instrument), tablet, noted (found.whenRetired, alteration));
        case Field::polarity:
            return setPolarity (std::move (instrument), tablet, noted (found.polarity, alteration));
        case Field::division:
            return setDivision (std::move (instrument), tablet, noted (found.division, alteration));
        case Field::card:
            return giveCard (std::move (instrument), tablet, noted (found.cardFile, alteration));
        case Field::tapSource:
        case Field::tapPolarity:
        case Field::tapNode:
            break;
    }
    refuseOther (alteration, "the rail");
}

Card revert (Card card, const Alteration& alteration)
{
    using Field = Alteration::Field;
    const auto& tap = alteration.tap;
    if (! alteration.isOfTap())
        refuseOther (alteration, "a card");
    const auto found = tapNamed (card, tap).asFound.value_or (AsFoundTap());
    if (alteration.field == Field::tapSource)
        return setTapSource (std::move (card), tap, noted (found.source, alteration));
    if (alteration.field == Field::tapPolarity)
        return setTapPolarity (std::move (card), tap, noted (found.polarity, alteration));
    return moveTapToNode (std::move (card), tap, noted (found.node, alteration));
}

} // namespace stopwright
