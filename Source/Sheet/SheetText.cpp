// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SheetText.h"

#include "Organ/WaveWords.h"
#include "Units/Engineering.h"

#include <array>
#include <charconv>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr int figures = 3;

/// The nearest number of three figures.
double rounded (double value)
{
    std::array<char, 40> buffer {};
    const auto written =
        std::to_chars (buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific, figures - 1);
    double result = value;
    std::from_chars (buffer.data(), written.ptr, result);
    return result;
}

std::string valueText (double value, Quantity quantity)
{
    if (! std::isfinite (value))
        return formatForReading (value, quantity);
    if (value == 0.0)
        return "0";
    return formatEngineering (rounded (value), quantity);
}

/// "150 Ω" and not "150.0 Ω".
std::string readingText (double value, Quantity quantity)
{
    auto text = formatForReading (value, quantity, figures);
    const auto end = std::min (text.find (' '), text.size());
    if (text.find ('.') >= end)
        return text;
    auto kept = text.find_last_not_of ('0', end - 1);
    kept = text[kept] == '.' ? kept : kept + 1;
    return text.erase (kept, end - kept);
}

void describe (std::vector<LabelLine>& lines, const Resistor& part)
{
    lines.push_back ({ valueText (part.ohms, Quantity::resistance) });
}

void describe (std::vector<LabelLine>& lines, const Capacitor& part)
{
    lines.push_back ({ valueText (part.farads, Quantity::capacitance) });
}

void describe (std::vector<LabelLine>& lines, const Inductor& part)
{
    lines.push_back ({ valueText (part.henries, Quantity::inductance) });
    if (part.windingOhms > 0.0)
        lines.push_back ({ readingText (part.windingOhms, Quantity::resistance), false, true });
}

void describe (std::vector<LabelLine>& lines, const Potentiometer& part)
{
    lines.push_back ({ valueText (part.ohms, Quantity::resistance) + (part.taper == Taper::log ? " log" : "") });
    const double percent = std::isfinite (part.position) ? std::round (100.0 * part.position) : 0.0;
    lines.push_back ({ formatEngineering (percent, Quantity::number) + " %", false, true });
}

void describe (std::vector<LabelLine>& lines, const Switch& part)
{
    lines.push_back ({ part.closed ? "closed" : "open", false, true });
}

void describe (std::vector<LabelLine>& lines, const OpAmp& part)
{
    lines.push_back (
        { part.gainBandwidthHz ? readingText (*part.gainBandwidthHz, Quantity::frequency) : "ideal", false, true });
}

void describe (std::vector<LabelLine>& lines, const Diode& part)
{
    if (part.seriesOhms > 0.0)
        lines.push_back ({ readingText (part.seriesOhms, Quantity::resistance), false, true });
}

void describe (std::vector<LabelLine>& lines, const Transistor& part)
{
    lines.push_back ({ "gain " + readingText (part.forwardBeta, Quantity::number), false, true });
}

void describe (std::vector<LabelLine>& lines, const Supply& part)
{
    lines.push_back ({ readingText (part.volts, Quantity::voltage) });
}

void describeTap (std::vector<LabelLine>& lines, const Tap& tap)
{
    std::string wave (waveName (tap.wave.kind));
    if (tap.wave.kind == WaveKind::staircase)
        wave.append (" ").append (std::to_string (tap.wave.ranks));
    if (tap.polarity < 0)
        wave.insert (0, "- ");
    lines.push_back ({ wave + ", " + tap.footage.text() + " ft", false, true });
    std::string level (levelPrefix (tap.wave.kind));
    level += readingText (tap.voltsPeakToPeak, Quantity::voltage) + " p-p";
    if (tap.sourceOhms > 0.0)
        level += ", " + valueText (tap.sourceOhms, Quantity::resistance);
    lines.push_back ({ level, false, true });
}

} // namespace

std::vector<LabelLine> labelLines (const Card& card, const GraphElement& element)
{
    if (element.kind == ElementKind::output)
        return { { "output", false, true } };
    std::vector<LabelLine> lines;
    if (element.kind == ElementKind::tap)
    {
        lines.push_back ({ card.taps[element.index].name, true });
        describeTap (lines, card.taps[element.index]);
        return lines;
    }
    const auto& part = card.parts[element.index];
    lines.push_back ({ part.name, true });
    std::visit ([&] (const auto& value) { describe (lines, value); }, part.value);
    return lines;
}

} // namespace stopwright
