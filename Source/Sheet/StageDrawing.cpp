// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/StageDrawing.h"

#include "Sheet/CsvText.h"
#include "Sheet/PictureLegend.h"
#include "Sheet/PlotAxis.h"
#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"
#include "Units/Decibels.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double lowestDb = -60.0;

bool hasLimit (const StageHeadroom& stage)
{
    return std::isfinite (stage.roomDb);
}

double rmsReLimitDb (const StageHeadroom& stage)
{
    const double peak = stage.peakVolts();
    return peak > 0.0 ? -stage.roomDb + toDecibels (stage.rmsVolts / peak) : -stage.roomDb;
}

class StagePlot
{
public:
    StagePlot (const StageReading& reading, std::span<const std::string> clipped, const ReadingFormat& format)
        : reading_ (reading),
          clipped_ (clipped),
          format_ (format),
          letter_ (format.letter),
          pen_ (picture_.drawing)
    {}

    ReadingPicture picture()
    {
        const auto area = addLegend (beginPicture (picture_, format_));
        placePlot (area);
        picture_.sentence = sentence();
        if (plot_.width < 4.0 * letter_ || shown_.empty())
            return std::move (picture_);
        rule();
        for (std::size_t line = 0; line < shown_.size(); ++line)
            addStage (reading_.stages[shown_[line]], plot_.y + lineHeight_ * static_cast<double> (line));
        picture_.columnLength = shown_.size();
        return std::move (picture_);
    }

private:
    bool isLit (const StageHeadroom& stage) const
    {
        return std::ranges::find (clipped_, titleOf (stage)) != clipped_.end();
    }

    void addLamp (const DrawingBox& box)
    {
        const double middle = box.x + 0.5 * box.width;
        const double half = 0.5 * box.height;
        pen_.polygon ({ { middle - half, box.bottom() }, { middle + half, box.bottom() }, { middle, box.y } },
                      Ink::notice);
    }

    DrawingBox addLegend (const DrawingBox& area)
    {
        PictureLegend legend (pen_, area, letter_);
        legend.addSource ("peak bound");
        legend.add (
            [this] (const DrawingBox& box) {
                pen_.fill ({ box.x, box.y + 0.25 * box.height, box.width, 0.5 * box.height }, Ink::result);
            },
            "rms");
        legend.add ([this] (const DrawingBox& box) { pen_.fill (box, Ink::notice); }, "beyond the limit");
        if (! clipped_.empty())
            legend.add ([this] (const DrawingBox& box) { addLamp (box); }, "has clipped");
        return legend.rest();
    }

    /// As many lines as there is height for, each of two rows where there is enough.
    void placePlot (const DrawingBox& area)
    {
        const double below = 1.7 * letter_;
        const double height = area.height - 0.4 * letter_ - below;
        const auto count = std::max<std::size_t> (1, reading_.stages.size());
        const double least = 1.45 * letter_;
        const auto fits = static_cast<std::size_t> (std::max (1.0, std::floor (height / least)));
        lineHeight_ = std::min (height / static_cast<double> (std::min (count, fits)), 3.6 * letter_);
        isTwoRows_ = lineHeight_ >= 2.6 * letter_;
        chooseStages (std::min (count, fits));

        roomWidth_ = textWidth ("\u2212188.8 dB", letter_, true) + 0.4 * letter_;
        nameWidth_ = isTwoRows_ ? 0.0 : 0.36 * area.width;
        plot_ = { area.x + nameWidth_, area.y + 0.4 * letter_, area.width - nameWidth_ - roomWidth_,
                  lineHeight_ * static_cast<double> (shown_.size()) };
        constexpr double step = 6.0;
        double highest = step;
        for (const auto& stage : reading_.stages)
            if (hasLimit (stage))
                highest = std::max (highest, step * std::ceil (-stage.roomDb / step));
        across_ = { lowestDb, highest, plot_.x, plot_.right(), false };
    }

    void chooseStages (std::size_t most)
    {
        for (std::size_t stage = 0; stage < reading_.stages.size(); ++stage)
            shown_.push_back (stage);
        if (shown_.size() <= most)
            return;
        std::ranges::stable_sort (shown_, {}, [this] (std::size_t stage) { return reading_.stages[stage].roomDb; });
        shown_.resize (most);
        std::ranges::sort (shown_);
    }

    void rule()
    {
        std::vector<AxisMark> marks;
        for (int level = static_cast<int> (lowestDb); level <= across_.last; level += 20)
            marks.push_back ({ static_cast<double> (level), level == 0 ? "limit" : signedText (level, 0) });
        ruleUp (pen_, plot_, across_, marks, letter_, plot_.bottom() + 1.3 * letter_);
        pen_.text ({ format_.width, plot_.bottom() + 1.3 * letter_ }, "dB room", letter_, Ink::faintInk,
                   TextAlign::right);
        const double x = across_.at (0.0);
        pen_.line ({ x, plot_.y }, { x, plot_.bottom() }, Ink::ink, 2.0);
    }

    void addStage (const StageHeadroom& stage, double y)
    {
        const double nameRow = isTwoRows_ ? 1.3 * letter_ : 0.0;
        const double barHeight = std::min (lineHeight_ - nameRow - 0.3 * letter_, 1.2 * letter_);
        const DrawingBox bar { plot_.x, isTwoRows_ ? y + nameRow : y + 0.5 * (lineHeight_ - barHeight), plot_.width,
                               barHeight };
        const double base = isTwoRows_ ? y + 1.0 * letter_ : y + 0.5 * lineHeight_ + 0.36 * letter_;
        double nameX = 0.0;
        if (isLit (stage))
        {
            addLamp ({ 0.0, base - 0.8 * letter_, 0.9 * letter_, 0.85 * letter_ });
            nameX = 1.2 * letter_;
        }
        const double nameRoom = (isTwoRows_ ? format_.width : nameWidth_ - 0.6 * letter_) - nameX;
        pen_.text ({ nameX, base }, fittedText (titleOf (stage), letter_, isLit (stage), nameRoom), letter_, Ink::ink,
                   TextAlign::left, isLit (stage));
        if (hasLimit (stage))
            addBars (stage, bar);
        const auto room = hasLimit (stage) ? signedText (stage.roomDb, 1) + " dB" : std::string ("no limit");
        const bool isOver = hasLimit (stage) && stage.roomDb < 0.0;
        pen_.text ({ format_.width, bar.y + 0.5 * bar.height + 0.36 * letter_ }, room, letter_,
                   isOver             ? Ink::notice
                   : hasLimit (stage) ? Ink::ink
                                      : Ink::faintInk,
                   TextAlign::right, isOver);
        picture_.spots.push_back ({ { 0.0, y, format_.width, lineHeight_ }, sentenceOf (stage), {} });
    }

    void addBars (const StageHeadroom& stage, const DrawingBox& bar)
    {
        const double peak = across_.at (-stage.roomDb);
        const double limit = across_.at (0.0);
        const DrawingBox wide { bar.x, bar.y, std::min (peak, limit) - bar.x, bar.height };
        pen_.fill (wide, Ink::source, DrawingPen::sourceStrength);
        pen_.hatch (wide, Ink::source);
        if (peak > limit)
            pen_.fill ({ limit, bar.y, peak - limit, bar.height }, Ink::notice);
        const double rms = across_.at (rmsReLimitDb (stage));
        pen_.fill ({ bar.x, bar.y + 0.28 * bar.height, rms - bar.x, 0.44 * bar.height }, Ink::result);
    }

    std::string sentenceOf (const StageHeadroom& stage) const
    {
        auto text = titleOf (stage) + ": peaks " + voltsText (stage.lowestVolts) + " to "
                    + voltsText (stage.highestVolts) + ", "
                    + levelText (levelOfRms (stage.rmsVolts, format_.unit), format_.unit);
        if (! hasLimit (stage))
            return text + "; it states no limit";
        text += stage.roomDb < 0.0 ? "; clips by " : "; room ";
        return text + signedText (std::abs (stage.roomDb), 1) + " dB, " + signedText (stage.roomAtShareDb, 1)
               + " dB but for 0.1 % of the time";
    }

    std::string sentence() const
    {
        const auto first = firstToClip (reading_.stages);
        const auto left = reading_.stages.size() - shown_.size();
        auto text = ! first
                        ? std::string ("No stage states a limit, so none clips; give rails to those that have them.")
                        : (reading_.stages[*first].roomDb < 0.0 ? "First to clip, and it does: "
                                                                : "Nothing clips; least room: ")
                              + titleOf (reading_.stages[*first]) + ", " + decibelText (reading_.stages[*first].roomDb);
        if (left > 0)
            text += "; " + std::to_string (left) + " with more room not shown";
        return text;
    }

    const StageReading& reading_;
    std::span<const std::string> clipped_;
    const ReadingFormat& format_;
    double letter_;
    ReadingPicture picture_;
    DrawingPen pen_;
    DrawingBox plot_;
    PlotAxis across_;
    std::vector<std::size_t> shown_;
    double lineHeight_ = 0.0;
    double nameWidth_ = 0.0;
    double roomWidth_ = 0.0;
    bool isTwoRows_ = false;
};

} // namespace

ReadingPicture
    stagePicture (const StageReading& reading, std::span<const std::string> clipped, const ReadingFormat& format)
{
    return StagePlot (reading, clipped, format).picture();
}

std::string stageCsv (const StageReading& reading)
{
    CsvText csv ({ "stage", "lower_limit_v", "upper_limit_v", "lowest_v", "highest_v", "rms_v", "share_of_time_below",
                   "share_of_time_above", "room_db", "room_at_0.1_percent_of_time_db" });
    for (const auto& stage : reading.stages)
    {
        csv.cell (titleOf (stage)).cell (stage.limits.low).cell (stage.limits.high);
        csv.cell (stage.lowestVolts).cell (stage.highestVolts).cell (stage.rmsVolts);
        csv.cell (stage.shareBelow).cell (stage.shareAbove).cell (stage.roomDb).cell (stage.roomAtShareDb).end();
    }
    return csv.text();
}

} // namespace stopwright
