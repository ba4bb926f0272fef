// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/WaveDrawing.h"

#include "Sheet/ClippedCurve.h"
#include "Sheet/CsvText.h"
#include "Sheet/DrawingPen.h"
#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"
#include "Units/Engineering.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double across = ScopeSetting::divisionsAcross;
constexpr double up = ScopeSetting::divisionsUp;

ScopeSetting settingOf (const WaveReading& reading, const WaveChoice& choice)
{
    const auto automatic = reading.automatic();
    return { choice.voltsPerDivision.value_or (automatic.voltsPerDivision),
             choice.secondsPerDivision.value_or (automatic.secondsPerDivision) };
}

class WavePlot
{
public:
    WavePlot (const WaveReading& reading, const WaveChoice& choice, const ReadingFormat& format)
        : reading_ (reading),
          setting_ (settingOf (reading, choice)),
          format_ (format),
          letter_ (format.letter),
          pen_ (picture_.drawing)
    {}

    ReadingPicture picture()
    {
        plot_ = addWords (beginPicture (picture_, format_));
        if (plot_.width < 4.0 * letter_ || plot_.height < 3.0 * letter_)
            return std::move (picture_);
        rule();
        if (! reading_.isSilent())
        {
            addTrace();
            addSpots();
        }
        return std::move (picture_);
    }

private:
    static std::string seconds (double value) { return formatForReading (value, Quantity::time); }

    /// A meter shows no peaks: where levels are told peak to peak, these are told in volts rms.
    std::string rms (double value) const
    {
        const auto unit = format_.unit == LevelUnit::voltsPeakToPeak ? LevelUnit::voltsRms : format_.unit;
        return levelText (levelOfRms (value, unit), unit);
    }

    /// The settings above the plot, the meters below; what is left between.
    DrawingBox addWords (const DrawingBox& area)
    {
        const double row = 1.5 * letter_;
        const double base = 1.05 * letter_;
        const auto settings = formatForReading (setting_.voltsPerDivision, Quantity::voltage, 1) + " and "
                              + formatForReading (setting_.secondsPerDivision, Quantity::time, 1) + " a division";
        pen_.text ({ area.x, area.y + base }, fittedText (settings, letter_, false, area.width), letter_, Ink::ink);
        if (reading_.isSilent())
        {
            picture_.sentence =
                "No generator sounds for this key at the footages of this card; choose a key nearer to the middle.";
            return { area.x, area.y + row, area.width, area.height - row };
        }
        picture_.sentence =
            reading_.neverRepeats()
                ? "The taps are of pitches that drift against each other: this is one moment, it never repeats."
                : "One period is " + seconds (1.0 / reading_.wave.baseHz.front()) + "; no probe's load is counted.";
        return addMeters ({ area.x, area.y + row, area.width, area.height - row });
    }

    DrawingBox addMeters (const DrawingBox& area)
    {
        const auto& meters = reading_.meters;
        const std::vector<std::pair<std::string, std::string>> shown {
            { "peak to peak ", voltsText (meters.peakToPeakVolts()) },
            { "true rms ", rms (meters.rmsVolts) },
            { "averaging meter ", rms (meters.averageVolts) }
        };
        const double row = 1.5 * letter_;
        double x = area.x;
        double y = 1.05 * letter_;
        std::vector<DrawnText> texts;
        for (const auto& [name, value] : shown)
        {
            const double nameWidth = textWidth (name, letter_, false);
            const double width = nameWidth + textWidth (value, letter_, true);
            if (x > area.x && x + width > area.right())
            {
                x = area.x;
                y += row;
            }
            texts.push_back ({ { x, y }, name, letter_, TextAlign::left, false, Ink::faintInk });
            texts.push_back ({ { x + nameWidth, y }, value, letter_, TextAlign::left, true, Ink::ink });
            x += width + 1.2 * letter_;
        }
        const double height = y + 0.45 * letter_;
        for (auto& text : texts)
        {
            text.at.y += area.bottom() - height;
            picture_.drawing.texts.push_back (std::move (text));
        }
        return { area.x, area.y, area.width, area.height - height - 0.3 * letter_ };
    }

    double xOf (double divisions) const { return plot_.x + plot_.width * divisions / across; }

    double yOf (double value) const
    {
        return plot_.y + plot_.height * (0.5 - value / (setting_.voltsPerDivision * up));
    }

    bool isShown (double value) const { return std::abs (value) <= 0.5 * setting_.voltsPerDivision * up; }

    void rule()
    {
        for (int division = 1; division < ScopeSetting::divisionsAcross; ++division)
            pen_.rule ({ xOf (division), plot_.y }, { xOf (division), plot_.bottom() });
        for (int division = 1; division < ScopeSetting::divisionsUp; ++division)
        {
            const double y = plot_.y + plot_.height * division / up;
            if (2 * division == ScopeSetting::divisionsUp)
                pen_.line ({ plot_.x, y }, { plot_.right(), y }, Ink::hairline);
            else
                pen_.rule ({ plot_.x, y }, { plot_.right(), y });
        }
        pen_.frame (plot_, Ink::hairline);
    }

    /// Two columns a point, with the lowest and highest that happens in it.
    void addTrace()
    {
        constexpr double columnsPerPoint = 2.0;
        const double window = setting_.secondsPerDivision * across;
        const int columns = std::max (2, static_cast<int> (columnsPerPoint * plot_.width));
        std::vector<DrawingPoint> points;
        points.reserve (2 * static_cast<std::size_t> (columns));
        bool isRising = true;
        for (int column = 0; column < columns; ++column)
        {
            const double x = plot_.x + plot_.width * (column + 0.5) / columns;
            const auto span = reading_.between (window * column / columns, window * (column + 1) / columns);
            if (yOf (span.lowest) - yOf (span.highest) < 0.5)
            {
                points.push_back ({ x, yOf (0.5 * (span.lowest + span.highest)) });
                continue;
            }
            // Entered from where the last column ended.
            isRising = points.empty() || points.back().y > 0.5 * (yOf (span.lowest) + yOf (span.highest));
            points.push_back ({ x, yOf (isRising ? span.lowest : span.highest) });
            points.push_back ({ x, yOf (isRising ? span.highest : span.lowest) });
        }
        auto pieces = clippedCurve (points, plot_.y, plot_.bottom());
        if (pieces.empty())
            picture_.sentence = "The whole trace lies beyond the screen; choose more volts a division.";
        for (auto& piece : pieces)
            pen_.path (std::move (piece), Ink::result, 1.8);
    }

    void addSpots()
    {
        constexpr int spotsPerDivision = 5;
        constexpr int count = spotsPerDivision * ScopeSetting::divisionsAcross;
        for (int index = 0; index < count; ++index)
        {
            const double time = (index + 0.5) * setting_.secondsPerDivision / spotsPerDivision;
            const double value = reading_.at (time);
            const double x = xOf ((index + 0.5) / spotsPerDivision);
            const double width = plot_.width / count;
            picture_.spots.push_back (
                { { x - 0.5 * width, plot_.y, width, plot_.height },
                  seconds (time) + " after the rising edge: " + voltsText (value),
                  isShown (value) ? std::optional (DrawingPoint { x, yOf (value) }) : std::nullopt });
        }
    }

    const WaveReading& reading_;
    ScopeSetting setting_;
    const ReadingFormat& format_;
    double letter_;
    ReadingPicture picture_;
    DrawingPen pen_;
    DrawingBox plot_;
};

} // namespace

ReadingPicture wavePicture (const WaveReading& reading, const WaveChoice& choice, const ReadingFormat& format)
{
    return WavePlot (reading, choice, format).picture();
}

std::string waveCsv (const WaveReading& reading, const WaveChoice& choice)
{
    constexpr int points = 1000;
    CsvText csv ({ "time_s", "volts" });
    const double window = settingOf (reading, choice).secondsPerDivision * across;
    for (int point = 0; point <= points; ++point)
        csv.cell (window * point / points).cell (reading.at (window * point / points)).end();
    return csv.text();
}

} // namespace stopwright
