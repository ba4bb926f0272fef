// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MatchReport.h"

#include "Command/NumberText.h"
#include "Command/RailSelection.h"
#include "Command/TextTable.h"
#include "Study/ResistorSearch.h"
#include "Units/CsvCell.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <ostream>
#include <string_view>

namespace stopwright
{

namespace
{

constexpr int keysPerOctave = 12;

std::string ohmsText (double ohms)
{
    return formatForReading (ohms, Quantity::resistance, 4);
}

std::string_view missWord (MatchMiss miss)
{
    constexpr std::array<std::string_view, 4> words { "", "silent", "too soft", "too loud" };
    return words[static_cast<std::size_t> (miss)];
}

std::string ohmsText (const MatchedOhms& found)
{
    return found.ohms ? ohmsText (*found.ohms) : std::string ("none: ").append (missWord (found.miss));
}

/// Two cells: the ohms, and why there are none.
std::string csvOhms (const MatchedOhms& found)
{
    return found.ohms ? csvNumber (*found.ohms) + ',' : std::string (",").append (missWord (found.miss));
}

/// Says in words why there is none.
void printMisses (const std::vector<MatchedOhms>& all, std::ostream& out)
{
    const auto has = [&all] (MatchMiss miss) { return std::ranges::find (all, miss, &MatchedOhms::miss) != all.end(); };
    if (has (MatchMiss::tooSoft))
        out << "none, too soft: even the smallest leaves the stop below the wish; let its network lose less\n";
    if (has (MatchMiss::tooLoud))
        out << "none, too loud: even the largest leaves the stop above the wish; let its network lose more\n";
    if (has (MatchMiss::silent))
        out << "none, silent: one of the two stops has no generator there\n";
}

std::string signedDb (double db)
{
    constexpr int decimals = 3;
    return signedNumber (db, decimals);
}

std::string levelText (double power)
{
    return power > 0.0 ? fixedNumber (toDecibels (std::sqrt (power)), 3) : "silent";
}

std::string csvLevel (double power)
{
    return csvNumber (toDecibels (std::sqrt (power)));
}

std::string csvStep (double db)
{
    return std::isnan (db) ? "" : csvNumber (db);
}

std::string choiceWords (const ResistorChoice& choice)
{
    if (choice.joined == ResistorChoice::Joined::single)
        return "";
    const char* const sign = choice.joined == ResistorChoice::Joined::series ? " + " : " // ";
    return formatEngineering (choice.first, Quantity::resistance) + sign
           + formatEngineering (choice.second, Quantity::resistance);
}

} // namespace

const MatchedResistor& fittedOf (const std::vector<MatchedResistor>& resistors)
{
    constexpr std::ptrdiff_t firstInHand = 2;
    const auto first = resistors.begin() + (resistors.size() > 2 ? firstInHand : 1);
    return *std::min_element (first, resistors.end(),
                              [] (const MatchedResistor& a, const MatchedResistor& b)
                              { return a.step.deviationDb < b.step.deviationDb; });
}

MatchReport::MatchReport (const RailStudy& study,
                          std::size_t stop,
                          std::size_t reference,
                          const RailState& state,
                          MatchWish wish)
    : study_ (study),
      stop_ (stop),
      reference_ (reference),
      wish_ (std::move (wish)),
      match_ (study, stop, reference, state)
{
    if (wish_.keys.empty())
        wish_.keys = match_.keys();
}

MatchedResistor MatchReport::chosen (const std::string& words, const ResistorChoice& choice) const
{
    return { words, choice, match_.step (wish_, choice.ohms) };
}

std::vector<MatchedResistor>
    MatchReport::resistors (Series series, const std::string& seriesName, const std::vector<double>& stock) const
{
    const double ohms = match_.solve (wish_);
    const auto cost = [this] (double value) { return match_.step (wish_, value).deviationDb; };
    std::vector<MatchedResistor> all;
    all.push_back (chosen ("exact", { ResistorChoice::Joined::single, ohms, 0.0, ohms }));
    all.push_back (chosen (seriesName, chooseFromSeries (series, ohms, cost)));
    if (stock.empty())
        return all;
    const auto inHand = chooseFromStock (stock, ohms, cost);
    all.push_back (chosen ("in hand", *inHand.single));
    all.push_back (chosen ("in hand, in series", *inHand.series));
    all.push_back (chosen ("in hand, in parallel", *inHand.parallel));
    return all;
}

std::vector<MatchReport::Octave> MatchReport::octaves() const
{
    std::vector<Octave> octaves;
    MatchWish wish = wish_;
    for (auto key = match_.keys().begin(); key != match_.keys().end();)
    {
        const int number = *key / keysPerOctave;
        const auto end =
            std::find_if (key, match_.keys().end(), [number] (int other) { return other / keysPerOctave != number; });
        wish.keys.assign (key, end);
        octaves.push_back ({ *key, *std::prev (end), match_.find (wish) });
        key = end;
    }
    return octaves;
}

void MatchReport::printCompass (std::ostream& out) const
{
    TextTable table ({ "key", stopName (study_, stop_) + " dBV", stopName (study_, reference_) + " dBV", "step dB",
                       "dBV(A)", "dBV(A)", "step dB(A)", "resistor for this key" });
    std::vector<MatchedOhms> all;
    for (const int key : keys())
    {
        if (key % keysPerOctave != 0 && key != keys().front() && key != keys().back())
            continue;
        all.push_back (match_.findAt (key, wish_));
        const double ohms = match_.presentOhms();
        const auto stop = match_.stopPower (key, ohms);
        const auto reference = match_.referencePower (key, ohms, wish_.against);
        table.addRow ({ keyName (key), levelText (stop.plain), levelText (reference.plain),
                        signedDb (match_.differenceDb (key, ohms, LevelMeasure::rms, wish_.against)),
                        levelText (stop.aWeighted), levelText (reference.aWeighted),
                        signedDb (match_.differenceDb (key, ohms, LevelMeasure::aWeighted, wish_.against)),
                        ohmsText (all.back()) });
    }
    table.print (out);
    printMisses (all, out);
    out << "offered is what is sold, " << formatForReading (lowestSoldOhms, Quantity::resistance) << " to "
        << formatForReading (highestSoldOhms, Quantity::resistance) << " (common practice, no source)\n";
    out << "mixing resistor of " << stopName (study_, stop_) << " now: " << ohmsText (match_.presentOhms()) << '\n';
}

void MatchReport::printTables (const std::vector<MatchedResistor>& resistors, std::ostream& out) const
{
    out << "\nWish: " << stopName (study_, stop_) << ' ' << signedDb (wish_.offsetDb) << " dB"
        << (wish_.measure == LevelMeasure::rms ? " (rms)" : " (A-weighted)") << " re " << stopName (study_, reference_);
    if (wish_.keys.size() == 1)
        out << " at " << keyName (wish_.keys.front());
    else
        out << ", least squares over " << wish_.keys.size() << " keys " << keyName (wish_.keys.front()) << " to "
            << keyName (wish_.keys.back());
    out << "\n\n";

    TextTable table ({ "mixing resistor", "of", "ohms", "step dB", "error dB", "rms off the wish dB" });
    for (const auto& resistor : resistors)
        table.addRow ({ resistor.words, choiceWords (resistor.choice), ohmsText (resistor.choice.ohms),
                        signedDb (resistor.step.meanDb), signedDb (resistor.step.errorDb),
                        fixedNumber (resistor.step.deviationDb, 3) });
    table.print (out);

    MatchWish other = wish_;
    const bool isFinished = wish_.against == MatchAgainst::finished;
    other.against = isFinished ? MatchAgainst::today : MatchAgainst::finished;
    out << (isFinished ? "Re the reference as it is today, which the new resistor shifts: "
                       : "Re the reference as it is when the resistor is in: ")
        << ohmsText (match_.find (other)) << '\n';
    printOctaves (out);
    printShifts (fittedOf (resistors), out);
}

void MatchReport::printOctaves (std::ostream& out) const
{
    out << "\nGraded, one resistor for each octave of keys:\n";
    TextTable table ({ "keys", "resistor" });
    std::vector<MatchedOhms> all;
    for (const Octave& octave : octaves())
    {
        table.addRow ({ keyName (octave.lowestKey) + " to " + keyName (octave.highestKey), ohmsText (octave.found) });
        all.push_back (octave.found);
    }
    table.print (out);
    printMisses (all, out);
}

void MatchReport::printShifts (const MatchedResistor& fitted, std::ostream& out) const
{
    const auto shifts = match_.shifts (fitted.choice.ohms);
    if (shifts.empty())
    {
        out << "\nNo other stop is on its bus.\n";
        return;
    }
    out << "\nThe other stops of its bus while it is drawn through " << ohmsText (fitted.choice.ohms) << ":\n";
    TextTable table ({ "stop", "re now dB", "largest dB", "re without it dB", "largest dB" });
    for (const auto& shift : shifts)
        table.addRow ({ stopName (study_, shift.stop), signedDb (shift.fromToday.compassDb),
                        signedDb (shift.fromToday.largestDb), signedDb (shift.fromWithout.compassDb),
                        signedDb (shift.fromWithout.largestDb) });
    table.print (out);
}

void MatchReport::csvCompass (std::ostream& out) const
{
    out << "key,stop_dbv,reference_dbv,step_db,stop_dbva,reference_dbva,step_dba,key_ohm,why_none\n";
    const double ohms = match_.presentOhms();
    for (const int key : keys())
    {
        const auto stop = match_.stopPower (key, ohms);
        const auto reference = match_.referencePower (key, ohms, wish_.against);
        out << keyName (key) << ',' << csvLevel (stop.plain) << ',' << csvLevel (reference.plain) << ','
            << csvStep (match_.differenceDb (key, ohms, LevelMeasure::rms, wish_.against)) << ','
            << csvLevel (stop.aWeighted) << ',' << csvLevel (reference.aWeighted) << ','
            << csvStep (match_.differenceDb (key, ohms, LevelMeasure::aWeighted, wish_.against)) << ','
            << csvOhms (match_.findAt (key, wish_)) << '\n';
    }
}

void MatchReport::csvResistors (const std::vector<MatchedResistor>& resistors, std::ostream& out)
{
    out << "choice,ohm,first_ohm,second_ohm,step_db,error_db,rms_off_wish_db\n";
    for (const auto& resistor : resistors)
        out << csvCell (resistor.words) << ',' << csvNumber (resistor.choice.ohms) << ','
            << csvNumber (resistor.choice.first) << ','
            << (resistor.choice.second > 0.0 ? csvNumber (resistor.choice.second) : "") << ','
            << csvNumber (resistor.step.meanDb) << ',' << csvNumber (resistor.step.errorDb) << ','
            << csvNumber (resistor.step.deviationDb) << '\n';
}

void MatchReport::csvOctaves (std::ostream& out) const
{
    out << "lowest_key,highest_key,ohm,why_none\n";
    for (const Octave& octave : octaves())
        out << keyName (octave.lowestKey) << ',' << keyName (octave.highestKey) << ',' << csvOhms (octave.found)
            << '\n';
}

void MatchReport::csvShifts (const std::vector<MatchedResistor>& resistors, std::ostream& out) const
{
    out << "stop,re_now_db,re_now_largest_db,re_without_db,re_without_largest_db\n";
    for (const auto& shift : match_.shifts (fittedOf (resistors).choice.ohms))
        out << csvStopName (study_, shift.stop) << ',' << csvNumber (shift.fromToday.compassDb) << ','
            << csvNumber (shift.fromToday.largestDb) << ',' << csvNumber (shift.fromWithout.compassDb) << ','
            << csvNumber (shift.fromWithout.largestDb) << '\n';
}

} // namespace stopwright
