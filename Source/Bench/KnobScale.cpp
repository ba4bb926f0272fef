// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/KnobScale.h"

#include "Units/Decibels.h"
#include "Units/Engineering.h"
#include "Units/Error.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double levelStepDb = 0.5;
constexpr double levelRounding = 0.02; ///< of a step: what four digits leave
constexpr double positionStep = 0.05;
constexpr double rateStepHz = 0.1;
constexpr double rateTurnHz = 10.0;
constexpr double rateMoveHz = 2.0;
constexpr double positionSweepRadians = 1.5 * std::numbers::pi; // a carbon track turns through about 270 degrees
constexpr double turn = 2.0 * std::numbers::pi;

/// Behind a value that has no letter of its own: "180" alone could be anything.
std::string unitOf (Quantity quantity)
{
    switch (quantity)
    {
        case Quantity::resistance:
            return " \u03a9";
        case Quantity::capacitance:
            return " F";
        case Quantity::inductance:
            return " H";
        default:
            return {};
    }
}

double roundedToFourDigits (double value)
{
    if (value == 0.0)
        return 0.0;
    const double unit = std::pow (10.0, std::floor (std::log10 (std::abs (value))) - 3.0);
    // Dividing by a power of ten that is exact keeps the digits short when written out.
    return unit < 1.0 ? std::round (value / unit) / std::round (1.0 / unit) : std::round (value / unit) * unit;
}

/// From between two multiples of `step` the first step leads to the adjacent one.
double steppedEvenly (double value, int steps, double step, double tolerance = 1e-9)
{
    const double place = value / step;
    const double from = steps > 0 ? std::floor (place + tolerance) : std::ceil (place - tolerance);
    return std::round ((from + steps) * step * 1e4) / 1e4;
}

} // namespace

KnobScale::KnobScale (const Card& card, const CardKnob& knob, Series series)
    : series_ (series),
      range_ (rangeOf (card, knob))
{
    if (knob.place == CardKnob::Place::tapLevel)
        law_ = Law::decibel;
    else if (knob.kind == KnobKind::position)
        law_ = Law::position;
    else if (knob.place == CardKnob::Place::tremulantDepth)
    {
        law_ = Law::position;
        isDepth_ = true;
    }
    else if (knob.place == CardKnob::Place::tremulantRate)
        law_ = Law::rate;
}

double KnobScale::stepped (double value, int steps) const
{
    if (steps == 0)
        return value;
    switch (law_)
    {
        case Law::position:
            return range_.clamp (steppedEvenly (value, steps, positionStep));
        case Law::rate:
            return range_.clamp (steppedEvenly (value, steps, rateStepHz));
        case Law::decibel:
            return range_.clamp (roundedToFourDigits (
                fromDecibels (steppedEvenly (toDecibels (value), steps, levelStepDb, levelRounding))));
        case Law::series:
            break;
    }
    if (! std::isfinite (value) || value <= 0.0)
        return value;
    return range_.clamp (nextPreferred (range_.clamp (value), series_, steps));
}

double KnobScale::moved (double value, double amount) const
{
    if (law_ == Law::position)
        return range_.clamp (std::round ((value + 0.5 * amount) * 1e4) / 1e4);
    if (law_ == Law::rate)
        return range_.clamp (std::round ((value + rateMoveHz * amount) * 1e4) / 1e4);
    if (! std::isfinite (value) || value <= 0.0)
        return value;
    return range_.clamp (roundedToFourDigits (value * std::pow (10.0, amount)));
}

double KnobScale::angleOf (double value) const
{
    if (law_ == Law::position)
        return (std::clamp (value, 0.0, 1.0) - 0.5) * positionSweepRadians;
    if (! std::isfinite (value) || value <= 0.0)
        return 0.0;
    if (law_ == Law::rate)
        return turn * (value / rateTurnHz - std::floor (value / rateTurnHz));
    const double decades = std::log10 (value);
    return turn * (decades - std::floor (decades));
}

std::vector<double> KnobScale::markAngles() const
{
    std::vector<double> angles;
    if (law_ == Law::position)
    {
        for (int tenth = 0; tenth <= 10; ++tenth)
            angles.push_back (angleOf (0.1 * tenth));
    }
    else if (law_ == Law::decibel || law_ == Law::rate)
    {
        for (int mark = 0; mark < 10; ++mark)
            angles.push_back (turn * 0.1 * mark);
    }
    else
    {
        for (const double mantissa : mantissas (series_))
            angles.push_back (turn * std::log10 (mantissa));
    }
    return angles;
}

std::string KnobScale::textOf (double value) const
{
    if (law_ == Law::position)
        return formatEngineering (std::round (value * 1000.0) / 10.0, Quantity::number) + " %";
    if (law_ == Law::decibel || range_.quantity == Quantity::frequency || ! std::isfinite (value))
        return formatForReading (value, range_.quantity);
    const auto text = formatEngineering (value, range_.quantity);
    const bool hasLetter = std::any_of (
        text.begin(), text.end(), [] (char letter) { return std::isalpha (static_cast<unsigned char> (letter)) != 0; });
    return hasLetter ? text : text + unitOf (range_.quantity);
}

std::string KnobScale::longTextOf (double value) const
{
    if (isDepth_)
        return textOf (value);
    return law_ == Law::position ? textOf (value) + " of the way up" : formatForReading (value, range_.quantity);
}

double KnobScale::parsePosition (std::string_view text) const
{
    const auto percent = text.find ('%');
    const double value = parseEngineering (text.substr (0, percent), Quantity::number);
    // 0.5 on a track is half the way; the depth of a tremulant is in per cent, whatever is typed.
    return percent == std::string_view::npos && value <= 1.0 && ! isDepth_ ? value : value / 100.0;
}

double KnobScale::parse (std::string_view text) const
{
    const double value = law_ == Law::position ? parsePosition (text) : parseEngineering (text, range_.quantity);
    if (! range_.contains (value))
    {
        throw Error ("\"" + std::string (text) + "\" is out of range: a " + std::string (range_.what) + " goes from "
                     + textOf (range_.lowest) + " to " + textOf (range_.highest) + ".");
    }
    return value;
}

} // namespace stopwright
