// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ResponsePlaces.h"

#include "Sheet/ReadingWords.h"
#include "Study/FootagePitch.h"

#include <algorithm>
#include <cmath>

namespace stopwright
{

namespace
{

using Curve = ResponseReading::Curve;

class PlaceList
{
public:
    PlaceList (const ResponseReading& reading, bool hasPhase) : reading_ (reading), hasPhase_ (hasPhase) {}

    void add (const Curve& curve, const ResponseRow& row, const std::string& name)
    {
        auto found = std::ranges::find_if (
            places_, [&] (const ResponsePlace& place)
            { return std::abs (place.frequencyHz - row.frequencyHz) <= samePitchTolerance * row.frequencyHz; });
        if (found == places_.end())
            found = places_.insert (places_.end(),
                                    { row.frequencyHz, row.magnitudeDb,
                                      name + formatForReading (row.frequencyHz, Quantity::frequency) + ":" });
        else
            found->sentence += ",";
        found->sentence += ' ';
        if (reading_.curves.size() > 1)
            found->sentence.append (curve.tap).append (" ");
        found->sentence += decibelText (row.magnitudeDb);
        if (hasPhase_)
            found->sentence.append (" at ").append (signedText (row.phaseDegrees, 0)).append ("\u00b0");
    }

    std::vector<ResponsePlace> take()
    {
        std::ranges::sort (places_, {}, &ResponsePlace::frequencyHz);
        return std::move (places_);
    }

    bool isEmpty() const noexcept { return places_.empty(); }

private:
    const ResponseReading& reading_;
    bool hasPhase_;
    std::vector<ResponsePlace> places_;
};

} // namespace

std::vector<ResponsePlace> responsePlaces (const ResponseReading& reading, bool hasPhase)
{
    constexpr std::size_t rowsApart = 8; // of 24 an octave
    PlaceList places (reading, hasPhase);
    for (const auto& curve : reading.curves)
        for (const auto& partial : curve.partials)
            places.add (curve, partial.row, "Partial " + partialText (partial.harmonic) + ", ");
    if (! places.isEmpty())
        return places.take();
    for (const auto& curve : reading.curves)
        for (std::size_t row = 0; row < curve.rows.size(); row += rowsApart)
            places.add (curve, curve.rows[row], {});
    return places.take();
}

std::string responsePeakText (const ResponseReading& reading)
{
    const ResponseRow* highest = nullptr;
    const Curve* of = nullptr;
    for (const auto& curve : reading.curves)
        for (const auto& row : curve.rows)
            if (highest == nullptr || row.magnitudeDb > highest->magnitudeDb)
            {
                highest = &row;
                of = &curve;
            }
    if (highest == nullptr)
        return "The card has no tap, so nothing drives its network; give it one.";
    return "Highest: " + decibelText (highest->magnitudeDb) + " re the open tap, at "
           + formatForReading (highest->frequencyHz, Quantity::frequency) + " from " + of->tap;
}

} // namespace stopwright
