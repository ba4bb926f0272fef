// SPDX-License-Identifier: GPL-3.0-or-later
//
// The lines of RailPanel: what each shows, tells and does.
#include "Bench/RailPanel.h"
#include "Bench/RailWords.h"
#include "Bench/WideText.h"

namespace stopwright
{

RailRow::Face RailPanel::faceOf (Kind kind, int index) const
{
    const auto& instrument = *session_.document().instrument;
    const auto place = static_cast<std::size_t> (index);
    RailRow::Face face;
    if (kind == Kind::stop)
    {
        const auto& stop = instrument.stops[place];
        const bool canSound = session_.canSound (index);
        face.name = fromUtf8 (stop.name);
        face.isInHand = index == session_.document().stopIndex;
        face.note = RailWords::note (stop, face.isInHand, canSound);
        face.isOn = stop.drawn && canSound;
        face.isUsable = canSound;
        face.canBeTaken = ! stop.cardFile.empty();
        if (face.canBeTaken && ! instrument.mixingBuses.empty())
        {
            face.bus = fromUtf8 (stop.bus);
            face.shortBus = RailWords::shortBus (stop);
        }
    }
    else if (kind == Kind::coupler)
    {
        face.name = fromUtf8 (instrument.couplers[place].name);
        face.isOn = instrument.couplers[place].drawn;
    }
    else if (kind == Kind::outlet)
    {
        face.name = RailWords::switchName (instrument.outlets[place]);
        face.isOn = instrument.outlets[place].isOn;
    }
    else
    {
        const auto name = fromUtf8 (clips_.name (index));
        const auto stage = name.fromLastOccurrenceOf (": ", false, false);
        face.sign = RailRow::Sign::lamp;
        face.name = name.contains (": ") ? name.upToLastOccurrenceOf (": ", false, false) : name;
        face.isOn = clips_.isLit (index);
        face.note = (stage == face.name ? juce::String() : stage + ": ") + (face.isOn ? "clipped" : "not clipped");
    }
    return face;
}

juce::String RailPanel::lessonOf (Kind kind, int index) const
{
    const auto& instrument = *session_.document().instrument;
    const auto place = static_cast<std::size_t> (index);
    switch (kind)
    {
        case Kind::stop:
            return RailWords::lesson (instrument, instrument.stops[place]);
        case Kind::coupler:
            return RailWords::lesson (instrument.couplers[place]);
        case Kind::outlet:
            return RailWords::lesson (instrument.outlets[place]);
        case Kind::stage:
        default:
            return fromUtf8 (clips_.name (index)) + ": lit once it clipped. Click: put the lamp out.";
    }
}

juce::String RailPanel::termOf (Kind kind, int index) const
{
    const auto& instrument = *session_.document().instrument;
    const auto place = static_cast<std::size_t> (index);
    switch (kind)
    {
        case Kind::stop:
            return "tablet";
        case Kind::coupler:
            return "coupler";
        case Kind::outlet:
            return instrument.outlets[place].kind == OutletKind::tremulant ? "tremulant" : "rotary speaker";
        case Kind::stage:
        default:
            return "clipping";
    }
}

TremulantRow* RailPanel::knobsBelow (Kind kind, int index) const
{
    if (kind != Kind::outlet)
        return nullptr;
    return findTremulantRow (session_.document().instrument->outlets[static_cast<std::size_t> (index)].name);
}

void RailPanel::use (Kind kind, int index)
{
    session_.attempt (
        [&]
        {
            const bool isOn = faceOf (kind, index).isOn;
            if (kind == Kind::stop)
                session_.draw (index, ! isOn);
            else if (kind == Kind::coupler)
                session_.drawCoupler (index, ! isOn);
            else if (kind == Kind::outlet)
                session_.switchOutlet (index, ! isOn);
            else
                clips_.putOut (index);
        });
    refresh();
}

} // namespace stopwright
