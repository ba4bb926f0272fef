// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/CardKnob.h"
#include "Units/PreferredValues.h"

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// How one knob moves, reads and is drawn. A part's number steps through a preferred series and one turn of its ring is
/// one decade; a tap's level steps by half a decibel, one turn is 20 dB; the rate of a tremulant steps by a tenth of a hertz,
/// one turn is 10 Hz; a potentiometer's position and a tremulant's depth go from 0 at the lower left to 1 at the lower
/// right. Threading: [control].
class KnobScale
{
public:
    KnobScale (const Card& card, const CardKnob& knob, Series series);

    /// The value so many steps on, within the range. From between two steps the first leads to the adjacent one.
    double stepped (double value, int steps) const;

    /// The value moved without steps: `amount` 1 is as far as twelve steps of E12, a decade (or half the position's way, or 2 Hz).
    /// Rounded to four digits, so that the document stays readable.
    double moved (double value, double amount) const;

    /// Where the hand of the ring points, in radians clockwise from the top.
    double angleOf (double value) const;

    /// Angles of the marks on the ring: the members of the series, decibel steps, hertz or tenths.
    std::vector<double> markAngles() const;

    /// As written on a part ("47k", "22n"), "2.00 V" for a level, "50 %" for a position or a depth, "6.00 Hz".
    std::string textOf (double value) const;

    /// With the unit, for reading aloud: "47.0 kOhm".
    std::string longTextOf (double value) const;

    /// A typed value. Fails: Error with a sentence on text that is no such value, or one out of range.
    double parse (std::string_view text) const;

    /// The lowest and highest legal value.
    const ValueRange& range() const noexcept { return range_; }

private:
    enum class Law
    {
        series,
        decibel,
        position, ///< and depth
        rate
    };

    double parsePosition (std::string_view text) const;

    Law law_ = Law::series;
    bool isDepth_ = false;
    Series series_ = Series::e12;
    ValueRange range_;
};

} // namespace stopwright
