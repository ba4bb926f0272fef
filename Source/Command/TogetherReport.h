// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"
#include "Study/RegistrationSum.h"

#include <iosfwd>
#include <string>
#include <vector>

namespace stopwright
{

/// What `stopwright together` prints, as tables and as CSV. Threading: [control].
class TogetherReport
{
public:
    /// Each of `groups` is held at once; their keys are on the keyboard of at least one of the stops.
    TogetherReport (const RailStudy& study, std::vector<std::size_t> stops, std::vector<std::vector<int>> groups);

    /// The sums of the groups chosen by index, what their partials do, and the polarity of each pair of stops.
    void printTables (const std::vector<std::size_t>& shown, std::ostream& out) const;

    void csvSums (std::ostream& out) const;
    void csvPartials (std::ostream& out) const;
    void csvPolarity (std::ostream& out) const;

private:
    struct Row
    {
        std::vector<int> keys;
        std::vector<double> aloneDbv;     ///< [stop], no other stop drawn, keys added as amplitudes
        std::vector<double> inCompanyDbv; ///< [stop], as it is in the sum
        RegistrationSum sum;              ///< a tone for each stop and key
    };

    Row rowOf (const std::vector<int>& keys) const;
    void printSums (const std::vector<Row>& rows, std::ostream& out) const;
    static void printPartials (const std::vector<Row>& rows, std::ostream& out);
    void printPolarity (std::ostream& out) const;
    void printOutlets (std::ostream& out) const;
    std::string outletOf (std::size_t stop) const;
    std::vector<int> commonKeys (std::size_t one, std::size_t other) const;

    const RailStudy& study_;
    std::vector<std::size_t> stops_;
    std::vector<std::vector<int>> groups_;
};

} // namespace stopwright
