// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/TogetherReport.h"

#include "Command/NumberText.h"
#include "Command/RailSelection.h"
#include "Command/TextTable.h"
#include "Organ/PlainText.h"
#include "Study/PolarityCheck.h"
#include "Study/StopEffect.h"
#include "Units/Decibels.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <ostream>

namespace stopwright
{

namespace
{

constexpr int decimals = 3;

std::string levelText (double dbv)
{
    return std::isfinite (dbv) ? fixedNumber (dbv, decimals) : "silent";
}

std::string signedDb (double db)
{
    return signedNumber (db, decimals);
}

std::string keysText (const std::vector<int>& keys)
{
    std::string text;
    for (const int key : keys)
        text.append (text.empty() ? "" : " ").append (keyName (key));
    return text;
}

/// "C2 to B3, F4".
std::string rangesText (const std::vector<int>& keys)
{
    std::string text;
    for (std::size_t first = 0; first < keys.size();)
    {
        std::size_t last = first;
        while (last + 1 < keys.size() && keys[last + 1] == keys[last] + 1)
            ++last;
        text.append (text.empty() ? "" : ", ").append (keyName (keys[first]));
        if (last > first)
            text.append (" to ").append (keyName (keys[last]));
        first = last + 1;
    }
    return text;
}

/// At most so many, then "...".
std::string harmonicsText (const std::vector<double>& harmonics, std::size_t most)
{
    std::string text;
    for (std::size_t index = 0; index < std::min (most, harmonics.size()); ++index)
        text.append (index == 0 ? "" : " ").append (csvNumber (harmonics[index]));
    return harmonics.size() > most ? text.append (" ...") : text;
}

std::vector<int> cancelledKeys (const PolarityCheck& check)
{
    std::vector<int> keys;
    for (const PolarityAtKey& key : check.keys)
        if (key.isCancelled())
            keys.push_back (key.key);
    return keys;
}

/// The Cs of the compass.
void printPolarityTable (const PolarityCheck& check, std::ostream& out)
{
    constexpr int keysPerOctave = 12;
    constexpr std::size_t most = 10;
    TextTable table ({ "key", "re stronger dB", "one turned dB", "partials both have", "of these cancelled" });
    for (const PolarityAtKey& key : check.keys)
        if (key.key % keysPerOctave == 0)
            table.addRow ({ keyName (key.key), signedDb (key.sumDb), signedDb (key.turnedDb),
                            std::to_string (key.sharedCount),
                            key.cancelledHarmonics.empty() ? "-" : harmonicsText (key.cancelledHarmonics, most) });
    table.print (out);
}

/// One stop's tones added as amplitudes.
double
    dbvOf (const RailStudy& study, std::size_t stop, const std::vector<std::size_t>& drawn, std::span<const int> keys)
{
    const auto state = study.withDrawn (drawn);
    std::vector<std::vector<RailPartial>> tones;
    for (const int key : keys)
        if (key >= study.keySource (stop).lowestKey && key <= study.keySource (stop).highestKey)
            tones.push_back (study.partials (stop, key, state));
    return addRegistration (tones).sum.dbv();
}

} // namespace

TogetherReport::TogetherReport (const RailStudy& study,
                                std::vector<std::size_t> stops,
                                std::vector<std::vector<int>> groups)
    : study_ (study),
      stops_ (std::move (stops)),
      groups_ (std::move (groups))
{}

TogetherReport::Row TogetherReport::rowOf (const std::vector<int>& keys) const
{
    Row row;
    row.keys = keys;
    for (const std::size_t stop : stops_)
    {
        row.aloneDbv.push_back (dbvOf (study_, stop, { stop }, keys));
        row.inCompanyDbv.push_back (dbvOf (study_, stop, stops_, keys));
    }
    row.sum = addRegistration (registrationTones (study_, stops_, keys));
    return row;
}

void TogetherReport::printTables (const std::vector<std::size_t>& shown, std::ostream& out) const
{
    std::vector<Row> rows;
    rows.reserve (shown.size());
    for (const std::size_t index : shown)
        rows.push_back (rowOf (groups_[index]));
    printSums (rows, out);
    printPartials (rows, out);
    printPolarity (out);
    printOutlets (out);
}

void TogetherReport::printSums (const std::vector<Row>& rows, std::ostream& out) const
{
    std::vector<std::string> headings { "dBV rms" };
    for (const std::size_t stop : stops_)
    {
        headings.push_back (stopName (study_, stop));
        headings.emplace_back ("in company");
    }
    for (const char* const heading : { "power sum", "sum", "sum re powers dB", "re strongest dB" })
        headings.emplace_back (heading);
    TextTable table (std::move (headings));
    for (const Row& row : rows)
    {
        std::vector<std::string> cells { keysText (row.keys) };
        for (std::size_t stop = 0; stop < stops_.size(); ++stop)
        {
            cells.push_back (levelText (row.aloneDbv[stop]));
            cells.push_back (levelText (row.inCompanyDbv[stop]));
        }
        cells.push_back (levelText (row.sum.powerDbv()));
        cells.push_back (levelText (row.sum.sum.dbv()));
        cells.push_back (signedDb (row.sum.gainDb()));
        cells.push_back (signedDb (row.sum.reStrongestDb()));
        table.addRow (std::move (cells));
    }
    table.print (out);
}

void TogetherReport::printPartials (const std::vector<Row>& rows, std::ostream& out)
{
    constexpr std::size_t most = 2;
    TextTable table ({ "partials that meet", "harmonic", "Hz", "mV peak", "re their powers dB", "" });
    bool isAny = false;
    for (const Row& row : rows)
        for (const bool isCancelled : { true, false })
            for (const auto& partial : isCancelled ? mostCancelled (row.sum, most) : mostReinforced (row.sum, most))
            {
                constexpr double millivolts = 1e3;
                isAny = true;
                table.addRow ({ keysText (row.keys), csvNumber (partial.harmonic), fixedNumber (partial.frequencyHz, 2),
                                fixedNumber (partial.sumPeakVolts * millivolts, 4), signedDb (partial.gainDb()),
                                isCancelled ? "cancels" : "reinforces" });
            }
    if (! isAny)
        return;
    out << '\n';
    table.print (out);
}

std::vector<int> TogetherReport::commonKeys (std::size_t one, std::size_t other) const
{
    std::vector<int> keys;
    std::ranges::set_intersection (compassOf (study_, one), compassOf (study_, other), std::back_inserter (keys));
    return keys;
}

void TogetherReport::printPolarity (std::ostream& out) const
{
    for (std::size_t first = 0; first < stops_.size(); ++first)
        for (std::size_t second = first + 1; second < stops_.size(); ++second)
        {
            const auto check =
                checkPolarity (study_, stops_[first], stops_[second], commonKeys (stops_[first], stops_[second]));
            const auto one = stopName (study_, stops_[first]);
            const auto other = stopName (study_, stops_[second]);
            out << '\n' << one << " and " << other << ": ";
            if (check.keys.empty())
            {
                out << "no key sounds with both.\n";
                continue;
            }
            out << "together below the stronger by more than 1 dB at " << check.cancelledKeys << " of "
                << check.keys.size() << " keys";
            if (check.cancelledKeys > 0)
                out << " (" << rangesText (cancelledKeys (check)) << ")";
            out << "; with one of them turned, at " << check.cancelledKeysTurned << ".\n";
            if (check.isTurnAdvised())
                out << "Turn the polarity of " << one << " or of " << other << ": the sum is then "
                    << signedDb (check.meanTurnedDb) << " dB re the stronger on the mean of the keys instead of "
                    << signedDb (check.meanSumDb) << " dB.\n";
            else if (check.cancelledKeys > 0)
                out << "Turning one of them would be no better.\n";
            else
                out << "Leave their polarity as it is.\n";
            if (stops_.size() == 2)
                printPolarityTable (check, out);
        }
}

std::string TogetherReport::outletOf (std::size_t stop) const
{
    const auto bus = study_.busOf (stop);
    const auto preamp = bus ? study_.preampOf (*bus) : std::nullopt;
    return preamp ? study_.instrument().preamps[*preamp].outlet : std::string();
}

void TogetherReport::printOutlets (std::ostream& out) const
{
    const auto first = outletOf (stops_.front());
    if (std::ranges::all_of (stops_, [&] (std::size_t stop) { return outletOf (stop) == first; }))
        return;
    out << "\nThey leave by different outlets and meet only in the air:";
    for (const std::size_t stop : stops_)
        out << (stop == stops_.front() ? " " : ", ") << stopName (study_, stop) << " by "
            << (outletOf (stop).empty() ? "none" : printable (outletOf (stop)));
    out << ". The sums are of their voltages.\n";
}

void TogetherReport::csvSums (std::ostream& out) const
{
    out << "keys,stop,alone_dbv,in_company_dbv,power_sum_dbv,sum_dbv,sum_dbva,re_powers_db,re_strongest_db\n";
    for (const auto& keys : groups_)
    {
        const Row row = rowOf (keys);
        for (std::size_t stop = 0; stop < stops_.size(); ++stop)
            out << keysText (keys) << ',' << csvStopName (study_, stops_[stop]) << ',' << csvNumber (row.aloneDbv[stop])
                << ',' << csvNumber (row.inCompanyDbv[stop]) << ',' << csvNumber (row.sum.powerDbv()) << ','
                << csvNumber (row.sum.sum.dbv()) << ',' << csvNumber (row.sum.sum.dbva()) << ','
                << csvNumber (row.sum.gainDb()) << ',' << csvNumber (row.sum.reStrongestDb()) << '\n';
    }
}

void TogetherReport::csvPartials (std::ostream& out) const
{
    out << "keys,harmonic,frequency_hz,strongest_peak_v,power_sum_peak_v,sum_peak_v,re_powers_db\n";
    for (const auto& keys : groups_)
        for (const auto& partial : addRegistration (registrationTones (study_, stops_, keys)).partials)
            out << keysText (keys) << ',' << csvNumber (partial.harmonic) << ',' << csvNumber (partial.frequencyHz)
                << ',' << csvNumber (partial.strongestPeakVolts) << ',' << csvNumber (partial.powerPeakVolts) << ','
                << csvNumber (partial.sumPeakVolts) << ',' << csvNumber (partial.gainDb()) << '\n';
}

void TogetherReport::csvPolarity (std::ostream& out) const
{
    out << "stop,other,key,sum_re_stronger_db,turned_re_stronger_db,shared_partials,cancelled_harmonics\n";
    for (std::size_t first = 0; first < stops_.size(); ++first)
        for (std::size_t second = first + 1; second < stops_.size(); ++second)
            for (const auto& key :
                 checkPolarity (study_, stops_[first], stops_[second], commonKeys (stops_[first], stops_[second])).keys)
                out << csvStopName (study_, stops_[first]) << ',' << csvStopName (study_, stops_[second]) << ','
                    << keyName (key.key) << ',' << csvNumber (key.sumDb) << ',' << csvNumber (key.turnedDb) << ','
                    << key.sharedCount << ',' << harmonicsText (key.cancelledHarmonics, key.cancelledHarmonics.size())
                    << '\n';
}

} // namespace stopwright
