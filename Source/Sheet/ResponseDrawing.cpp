// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ResponseDrawing.h"

#include "Sheet/ClippedCurve.h"
#include "Sheet/CsvText.h"
#include "Sheet/PictureLegend.h"
#include "Sheet/PlotAxis.h"
#include "Sheet/ResponsePlaces.h"
#include "Sheet/TextWidth.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace stopwright
{

namespace
{

using Curve = ResponseReading::Curve;

constexpr double shownDb = 60.0;
constexpr double halfTurn = 180.0;
constexpr double leastForPhase = 9.0; ///< ems of height that curves and phase need; with less it is told in words

/// Taps are told apart by number, dashes and ink together.
struct CurveStyle
{
    Ink ink;
    bool isDashed;
    double width;
};

CurveStyle styleOf (std::size_t curve)
{
    constexpr std::array<CurveStyle, 4> styles { CurveStyle { Ink::result, false, 2.0 },
                                                 CurveStyle { Ink::ink, true, 1.5 },
                                                 CurveStyle { Ink::result, true, 1.5 },
                                                 CurveStyle { Ink::faintInk, false, 1.2 } };
    return styles[curve % styles.size()];
}

class ResponsePlot
{
public:
    ResponsePlot (const ResponseReading& reading, bool hasPhase, const ReadingFormat& format)
        : reading_ (reading),
          hasPhase_ (hasPhase),
          tellsPhase_ (hasPhase),
          format_ (format),
          letter_ (format.letter),
          pen_ (picture_.drawing)
    {}

    ReadingPicture picture()
    {
        placePlots (addLegend (beginPicture (picture_, format_)));
        picture_.sentence = responsePeakText (reading_);
        if (reading_.curves.empty() || plot_.width < 4.0 * letter_ || plot_.height < 2.0 * letter_)
            return std::move (picture_);
        ruleAcross (pen_, plot_, level_, decibelMarks (level_, letter_, "dB"), letter_);
        ruleUp (pen_, plot_, across_, hertzMarks (across_), letter_, labelY_);
        pen_.frame (plot_, Ink::hairline);
        if (hasPhase_)
            rulePhase();
        for (std::size_t curve = 0; curve < reading_.curves.size(); ++curve)
            addCurve (curve);
        addSpots();
        return std::move (picture_);
    }

private:
    bool hasPartials() const
    {
        return std::ranges::any_of (reading_.curves, [] (const Curve& curve) { return ! curve.partials.empty(); });
    }

    /// The ten above the highest level, with a tenth to spare.
    double topDb() const
    {
        double highest = -shownDb;
        for (const auto& curve : reading_.curves)
            for (const auto& row : curve.rows)
                highest = std::max (highest, row.magnitudeDb);
        constexpr double step = 10.0;
        return step * std::ceil (highest / step + 0.1);
    }

    /// What to say of a curve of which nothing is to be seen.
    std::string whereabouts (const Curve& curve) const
    {
        const double bottom = topDb() - shownDb;
        const bool isBelow =
            std::ranges::all_of (curve.rows, [&] (const auto& row) { return row.magnitudeDb < bottom; });
        return isBelow && ! curve.rows.empty() ? " (below the scale)" : "";
    }

    DrawingBox addLegend (const DrawingBox& area)
    {
        PictureLegend legend (pen_, area, letter_);
        for (std::size_t curve = 0; curve < reading_.curves.size(); ++curve)
            legend.add (
                [&, style = styleOf (curve)] (const DrawingBox& box)
                {
                    const double y = box.y + 0.5 * box.height;
                    pen_.line ({ box.x, y }, { box.right(), y }, style.ink, style.width, style.isDashed);
                },
                (reading_.curves.size() > 1 ? std::to_string (curve + 1) + " " : "from ") + reading_.curves[curve].tap
                    + whereabouts (reading_.curves[curve]));
        if (hasPartials())
        {
            legend.add ([this] (const DrawingBox& box) { pen_.disc (middleOf (box), 0.27 * letter_, Ink::ink); },
                        keyName (reading_.key) + "'s partials");
            legend.add ([this] (const DrawingBox& box) { pen_.ring (middleOf (box), 0.27 * letter_, Ink::ink); },
                        "not in wave");
        }
        return legend.rest();
    }

    static DrawingPoint middleOf (const DrawingBox& box)
    {
        return { box.x + 0.5 * box.width, box.y + 0.5 * box.height };
    }

    void placePlots (const DrawingBox& area)
    {
        constexpr double phaseShare = 0.34;
        const double left = textWidth ("\u221280 dB", letter_, false) + 0.9 * letter_;
        plot_ = { area.x + left, area.y + 0.7 * letter_, area.width - left - 0.8 * letter_,
                  area.height - 2.6 * letter_ };
        labelY_ = plot_.bottom() + 1.55 * letter_;
        hasPhase_ = hasPhase_ && plot_.height >= leastForPhase * letter_;
        if (hasPhase_)
        {
            const double gap = 1.2 * letter_;
            const double height = phaseShare * (plot_.height - gap);
            strip_ = { plot_.x, plot_.bottom() - height, plot_.width, height };
            plot_.height -= height + gap;
        }
        const double top = topDb();
        across_ = { ResponseReading::lowestHz, ResponseReading::highestHz, plot_.x, plot_.right(), true };
        level_ = { top - shownDb, top, plot_.bottom(), plot_.y, false };
        phase_ = { -halfTurn, halfTurn, strip_.bottom(), strip_.y, false };
        pen_.text ({ area.x, labelY_ }, "Hz", letter_, Ink::faintInk);
    }

    void rulePhase()
    {
        std::vector<AxisMark> marks { { halfTurn, "180\u00b0" }, { 0.0, "0" }, { -halfTurn, "\u2212180" } };
        if (strip_.height < 4.0 * letter_)
            marks = { { halfTurn, "180\u00b0" }, { 0.0, {} }, { -halfTurn, "\u2212180" } };
        if (strip_.height < 2.0 * letter_)
            marks = { { 0.0, "0\u00b0" } };
        ruleAcross (pen_, strip_, phase_, marks, letter_);
        for (const auto& mark : hertzMarks (across_))
            pen_.rule ({ across_.at (mark.value), strip_.y }, { across_.at (mark.value), strip_.bottom() });
        pen_.frame (strip_, Ink::hairline);
    }

    void addCurve (std::size_t index)
    {
        const auto& curve = reading_.curves[index];
        const auto style = styleOf (index);
        std::vector<DrawingPoint> points;
        points.reserve (curve.rows.size());
        for (const auto& row : curve.rows)
            points.push_back ({ across_.at (row.frequencyHz), level_.beyond (row.magnitudeDb) });
        addPartials (curve);
        auto pieces = clippedCurve (points, plot_.y, plot_.bottom());
        if (! pieces.empty())
            addNumber (index, *std::ranges::max_element (pieces, {}, &std::vector<DrawingPoint>::size));
        for (auto& piece : pieces)
            pen_.path (std::move (piece), style.ink, style.width, style.isDashed);
        if (hasPhase_)
            addPhase (curve, style);
    }

    /// The number of a tap above its curve, each at another place.
    void addNumber (std::size_t index, const std::vector<DrawingPoint>& points)
    {
        if (reading_.curves.size() < 2 || points.empty())
            return;
        constexpr double spacing = 0.08;
        const double place = std::max (0.1, 0.45 - spacing * static_cast<double> (index));
        const auto& point = points[static_cast<std::size_t> (place * static_cast<double> (points.size() - 1))];
        pen_.text ({ point.x, std::max (plot_.y + letter_, point.y - 0.4 * letter_) }, std::to_string (index + 1),
                   letter_, Ink::ink, TextAlign::centre, true);
    }

    /// Where the phase wraps, the line is broken.
    void addPhase (const Curve& curve, const CurveStyle& style)
    {
        std::vector<DrawingPoint> points;
        double last = 0.0;
        for (const auto& row : curve.rows)
        {
            if (! points.empty() && std::abs (row.phaseDegrees - last) > halfTurn)
                pen_.path (std::exchange (points, {}), style.ink, style.width, style.isDashed);
            last = row.phaseDegrees;
            points.push_back ({ across_.at (row.frequencyHz), phase_.at (last) });
        }
        pen_.path (std::move (points), style.ink, style.width, style.isDashed);
    }

    /// As long as they stand apart.
    void addPartials (const Curve& curve)
    {
        const double apart = 0.55 * letter_;
        double lastX = -1e9;
        for (const auto& partial : curve.partials)
        {
            const double x = across_.at (partial.row.frequencyHz);
            if (x - lastX < apart || ! level_.contains (partial.row.magnitudeDb))
                continue;
            lastX = x;
            const DrawingPoint place { x, level_.at (partial.row.magnitudeDb) };
            if (partial.isInWave)
                pen_.disc (place, 0.27 * letter_, Ink::ink);
            else
                pen_.ring (place, 0.27 * letter_, Ink::ink);
        }
    }

    void addSpots()
    {
        constexpr double widest = 12.0;
        const auto places = responsePlaces (reading_, tellsPhase_);
        for (std::size_t index = 0; index < places.size(); ++index)
        {
            const double x = across_.at (places[index].frequencyHz);
            const double before = index > 0 ? x - across_.at (places[index - 1].frequencyHz) : 2.0 * widest;
            const double after = index + 1 < places.size() ? across_.at (places[index + 1].frequencyHz) - x : before;
            const double left = std::min (widest, 0.5 * before);
            picture_.spots.push_back (
                { { x - left, plot_.y, left + std::min (widest, 0.5 * after), format_.height - plot_.y },
                  places[index].sentence,
                  level_.contains (places[index].magnitudeDb)
                      ? std::optional (DrawingPoint { x, level_.at (places[index].magnitudeDb) })
                      : std::nullopt });
        }
    }

    const ResponseReading& reading_;
    bool hasPhase_;   ///< in a strip of its own
    bool tellsPhase_; ///< at the spots
    const ReadingFormat& format_;
    double letter_;
    double labelY_ = 0.0;
    ReadingPicture picture_;
    DrawingPen pen_;
    DrawingBox plot_;
    DrawingBox strip_;
    PlotAxis across_;
    PlotAxis level_;
    PlotAxis phase_;
};

} // namespace

ReadingPicture responsePicture (const ResponseReading& reading, bool hasPhase, const ReadingFormat& format)
{
    return ResponsePlot (reading, hasPhase, format).picture();
}

std::string responseCsv (const ResponseReading& reading)
{
    CsvText csv ({ "tap", "frequency_hz", "magnitude_db", "phase_deg", "partial_of_key" });
    for (const auto& curve : reading.curves)
    {
        for (const auto& row : curve.rows)
            csv.cell (curve.tap).cell (row.frequencyHz).cell (row.magnitudeDb).cell (row.phaseDegrees).cell ("").end();
        for (const auto& partial : curve.partials)
            csv.cell (curve.tap)
                .cell (partial.row.frequencyHz)
                .cell (partial.row.magnitudeDb)
                .cell (partial.row.phaseDegrees)
                .cell (partial.harmonic)
                .end();
    }
    return csv.text();
}

} // namespace stopwright
