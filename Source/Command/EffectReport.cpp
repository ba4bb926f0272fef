// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/EffectReport.h"

#include "Command/NumberText.h"
#include "Command/RailSelection.h"
#include "Command/TextTable.h"
#include "Organ/PlainText.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <cmath>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr int decimals = 3;

std::string signedDb (double db)
{
    return signedNumber (db, decimals);
}

/// Its largest change and the key.
std::string largestText (const LevelChange& change)
{
    return change.largestKey ? signedDb (change.largestDb).append (" ").append (keyName (*change.largestKey)) : "-";
}

std::string csvChange (const LevelChange& change)
{
    return csvNumber (change.compassDb) + ',' + csvNumber (change.largestDb) + ','
           + (change.largestKey ? keyName (*change.largestKey) : "");
}

std::string dbText (double db)
{
    return fixedNumber (std::abs (db), 2) + " dB";
}

} // namespace

EffectReport::EffectReport (const RailStudy& study, std::size_t stop, const RailState& state, double limitDb)
    : study_ (study),
      stop_ (stop),
      limitDb_ (limitDb),
      changes_ (changesByStop (study, stop, state)),
      loads_ (tapLoads (study, stop, state))
{}

bool EffectReport::isOverLimit (const OtherStopChange& change) const noexcept
{
    return std::abs (change.whenDrawn.largestDb) > limitDb_
           || std::abs (change.whenRetiredGrounded.largestDb) > limitDb_
           || std::abs (change.whenRetiredOpen.largestDb) > limitDb_;
}

void EffectReport::printTables (std::ostream& out) const
{
    const StopTablet& tablet = study_.instrument().stops[stop_];
    out << stopName (study_, stop_);
    if (study_.busOf (stop_))
        out << " added to the rail through " << formatForReading (tablet.mixingOhms, Quantity::resistance, 4)
            << ", mixing bus " << printable (tablet.bus) << "; when retired it is "
            << (tablet.whenRetired == WhenRetired::open ? "open" : "grounded") << ".\n\n";
    else
        out << " is heard at its card's output: the instrument has no mixing buses, so no resistor joins the stops.\n\n";
    printStops (out);
    out << '\n';
    printTaps (out);
    out << '\n';
    printWarnings (out);
}

void EffectReport::printStops (std::ostream& out) const
{
    TextTable table (
        { "other stop, dB", "drawn", "largest", "retired open", "largest", "retired grounded", "largest" });
    std::size_t elsewhere = 0;
    for (const auto& change : changes_)
    {
        if (! change.isOnTheSameBus)
        {
            ++elsewhere;
            continue;
        }
        table.addRow ({ stopName (study_, change.stop), signedDb (change.whenDrawn.compassDb),
                        largestText (change.whenDrawn), signedDb (change.whenRetiredOpen.compassDb),
                        largestText (change.whenRetiredOpen), signedDb (change.whenRetiredGrounded.compassDb),
                        largestText (change.whenRetiredGrounded) });
    }
    if (elsewhere < changes_.size())
        table.print (out);
    else
        out << (study_.busOf (stop_) ? "No other stop is on its mixing bus.\n" : "No other stop changes.\n");
    if (elsewhere > 0 && study_.busOf (stop_))
        out << "stops that are not on its bus, which do not change: " << elsewhere << '\n';
}

void EffectReport::printTaps (std::ostream& out) const
{
    TextTable table ({ "tap", "keyed bus", "behind", "key", "Hz", "input of the card", "bus level dB" });
    bool isAnyStated = false;
    for (const TapLoad& load : loads_)
        for (const auto& at : load.atKeys)
        {
            isAnyStated = true;
            table.addRow ({ printable (study_.card (stop_).taps[load.tap].name),
                            printable (study_.instrument().keyedBuses[*load.keyedBus].name),
                            formatForReading (load.busOhms, Quantity::resistance, 4), keyName (at.key),
                            fixedNumber (at.frequencyHz, 2),
                            formatForReading (std::abs (at.inputOhms), Quantity::resistance), signedDb (at.changeDb) });
        }
    if (isAnyStated)
        table.print (out);
    for (const TapLoad& load : loads_)
        printTapNotes (load, out);
}

void EffectReport::printTapNotes (const TapLoad& load, std::ostream& out) const
{
    constexpr int tenKeys = 10;
    const auto tap = printable (study_.card (stop_).taps[load.tap].name);
    if (! load.keyedBus)
    {
        out << "Tap " << tap
            << ": no keyed bus of its wave and footage states its sourceOhms, so what the tap costs it is not known.\n";
        return;
    }
    const auto bus = printable (study_.instrument().keyedBuses[*load.keyedBus].name);
    if (load.tenKeysDb)
        out << bus << ": a resistor per key; " << tenKeys << " keys held change each note by "
            << signedDb (*load.tenKeysDb) << " dB, tap or not.\n";
    if (load.sharers.empty())
        return;
    out << "On " << bus << " too, and changed alike:";
    for (const std::size_t sharer : load.sharers)
        out << (sharer == load.sharers.front() ? " " : ", ") << stopName (study_, sharer);
    out << '\n';
}

void EffectReport::printWarnings (std::ostream& out) const
{
    bool isAny = false;
    for (const auto& change : changes_)
    {
        if (! isOverLimit (change))
            continue;
        isAny = true;
        const bool isDrawnWorse =
            std::abs (change.whenDrawn.largestDb) >= std::abs (change.whenRetiredGrounded.largestDb);
        const LevelChange& worst = isDrawnWorse ? change.whenDrawn : change.whenRetiredGrounded;
        out << "Warning: " << stopName (study_, change.stop) << (worst.largestDb < 0.0 ? " loses " : " gains ")
            << dbText (worst.largestDb) << " at " << keyName (*worst.largestKey)
            << (isDrawnWorse ? " when it is drawn" : " when it is retired and grounded")
            << "; enlarge the mixing resistor of " << stopName (study_, stop_)
            << ", or load the bus with fewer ohms.\n";
    }
    for (const TapLoad& load : loads_)
        for (const auto& at : load.atKeys)
            if (std::abs (at.changeDb) > limitDb_)
            {
                isAny = true;
                out << "Warning: the keyed bus " << printable (study_.instrument().keyedBuses[*load.keyedBus].name)
                    << (at.changeDb < 0.0 ? " loses " : " gains ") << dbText (at.changeDb) << " at " << keyName (at.key)
                    << " to the tap " << printable (study_.card (stop_).taps[load.tap].name)
                    << "; give the card more input resistance, or a buffer.\n";
            }
    if (! isAny)
        out << "Nothing changes by more than " << fixedNumber (limitDb_, 2) << " dB.\n";
    else
        out << "The limit is " << fixedNumber (limitDb_, 2) << " dB (0.5 dB is common practice, no source).\n";
}

void EffectReport::csvStops (std::ostream& out) const
{
    out << "stop,same_bus,drawn_db,drawn_largest_db,drawn_largest_key,open_db,open_largest_db,open_largest_key,"
           "grounded_db,grounded_largest_db,grounded_largest_key,over_limit\n";
    for (const auto& change : changes_)
        out << csvStopName (study_, change.stop) << ',' << (change.isOnTheSameBus ? 1 : 0) << ','
            << csvChange (change.whenDrawn) << ',' << csvChange (change.whenRetiredOpen) << ','
            << csvChange (change.whenRetiredGrounded) << ',' << (isOverLimit (change) ? 1 : 0) << '\n';
}

void EffectReport::csvTaps (std::ostream& out) const
{
    out << "tap,behind_ohm,key,frequency_hz,input_re_ohm,input_im_ohm,bus_db,over_limit\n";
    for (const TapLoad& load : loads_)
        for (const auto& at : load.atKeys)
            out << load.tap + 1 << ',' << csvNumber (load.busOhms) << ',' << keyName (at.key) << ','
                << csvNumber (at.frequencyHz) << ',' << csvNumber (at.inputOhms.real()) << ','
                << csvNumber (at.inputOhms.imag()) << ',' << csvNumber (at.changeDb) << ','
                << (std::abs (at.changeDb) > limitDb_ ? 1 : 0) << '\n';
}

} // namespace stopwright
