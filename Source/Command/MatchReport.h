// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"
#include "Study/StockResistors.h"
#include "Study/StopMatch.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace stopwright
{

/// A mixing resistor that was looked for or chosen, with what it gives.
struct MatchedResistor
{
    std::string words; ///< "exact", "E24", "in hand, series"
    ResistorChoice choice;
    MatchStep step;
};

/// What `stopwright match` prints, as tables and as CSV. Threading: [control].
class MatchReport
{
public:
    MatchReport (const RailStudy& study,
                 std::size_t stop,
                 std::size_t reference,
                 const RailState& state,
                 MatchWish wish);

    const std::vector<int>& keys() const noexcept { return match_.keys(); }

    /// The exact resistor, its neighbour in the series, and the best of the parts in hand.
    /// Fails: Error in a sentence when no resistor gives the wish.
    std::vector<MatchedResistor>
        resistors (Series series, const std::string& seriesName, const std::vector<double>& stock) const;

    void printTables (const std::vector<MatchedResistor>& resistors, std::ostream& out) const;

    void printCompass (std::ostream& out) const;

    void csvCompass (std::ostream& out) const;
    static void csvResistors (const std::vector<MatchedResistor>& resistors, std::ostream& out);
    void csvOctaves (std::ostream& out) const;
    void csvShifts (const std::vector<MatchedResistor>& resistors, std::ostream& out) const;

private:
    struct Octave
    {
        int lowestKey = 0;
        int highestKey = 0;
        MatchedOhms found;
    };

    std::vector<Octave> octaves() const;
    MatchedResistor chosen (const std::string& words, const ResistorChoice& choice) const;
    void printOctaves (std::ostream& out) const;
    void printShifts (const MatchedResistor& fitted, std::ostream& out) const;

    const RailStudy& study_;
    std::size_t stop_;
    std::size_t reference_;
    MatchWish wish_;
    StopMatch match_;
};

/// The one that is fitted: the best of the parts in hand, else of the series. Threading: [control].
const MatchedResistor& fittedOf (const std::vector<MatchedResistor>& resistors);

} // namespace stopwright
