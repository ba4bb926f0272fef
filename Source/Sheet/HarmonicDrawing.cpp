// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/HarmonicDrawing.h"

#include "Sheet/CsvText.h"
#include "Sheet/PictureLegend.h"
#include "Sheet/PlotAxis.h"
#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"
#include "Study/FootagePitch.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

using Bar = HarmonicReading::Bar;

constexpr double lowestDb = -80.0;
constexpr double usualHighestDb = 6.0;
constexpr double mostHighestDb = 20.0;
constexpr double highestHz = 20000.0;
constexpr double windowStrength = 0.2;

// Base lines of the two rows below the plot, in ems.
constexpr double numberRow = 1.55;
constexpr double hertzRow = 2.85;

constexpr double leastForHertz = 12.0; ///< ems of height; with less the frequencies are told at the partials alone

/// The window of the mask that is about a partial, if there is one.
const MaskWindow* windowOf (const HarmonicReading& reading, const Bar& bar)
{
    if (! reading.mask)
        return nullptr;
    const auto found = std::ranges::find_if (reading.mask->windows,
                                             [&] (const MaskWindow& window) {
                                                 return ! window.isBand
                                                        && std::abs (window.lowestHz - bar.frequencyHz)
                                                               <= samePitchTolerance * bar.frequencyHz;
                                             });
    return found == reading.mask->windows.end() ? nullptr : &*found;
}

bool isOutside (const MaskWindow& window)
{
    return window.fit.verdict == MaskVerdict::tooStrong || window.fit.verdict == MaskVerdict::tooWeak
           || window.fit.verdict == MaskVerdict::absent;
}

std::string wishText (const MaskWindow& window)
{
    const auto wish = window.isBound ? "at most " + signedText (window.highestDb, 0)
                                     : signedText (window.lowestDb, 0) + " to " + signedText (window.highestDb, 0);
    return "target " + wish + " dB, " + (isOutside (window) ? "outside" : "inside");
}

class HarmonicPlot
{
public:
    HarmonicPlot (const HarmonicReading& reading, const ReadingFormat& format)
        : reading_ (reading),
          format_ (format),
          letter_ (format.letter),
          pen_ (picture_.drawing)
    {}

    ReadingPicture picture()
    {
        placePlot (addLegend (beginPicture (picture_, format_)));
        picture_.sentence = reading_.mask ? targetSentence() : strongestSentence();
        if (reading_.bars.empty() || plot_.width < 4.0 * letter_ || plot_.height < 2.0 * letter_)
            return std::move (picture_);
        ruleAcross (pen_, plot_, up_, decibelMarks (up_, letter_, "dB"), letter_);
        if (hasHertz_)
            ruleUp (pen_, plot_, across_, hertzMarks (across_), letter_, plot_.bottom() + hertzRow * letter_);
        addBands();
        addBars();
        pen_.line ({ plot_.x, plot_.bottom() }, { plot_.right(), plot_.bottom() }, Ink::ink);
        addNumbers();
        return std::move (picture_);
    }

private:
    DrawingBox addLegend (const DrawingBox& area)
    {
        PictureLegend legend (pen_, area, letter_);
        legend.addSource ("source");
        legend.add (
            [this] (const DrawingBox& box) {
                pen_.fill ({ box.x + 0.3 * box.width, box.y, 0.4 * box.width, box.height }, Ink::result);
            },
            "result");
        legend.add (
            [this] (const DrawingBox& box) {
                pen_.ring ({ box.x + 0.5 * box.width, box.y + 0.5 * box.height }, 0.28 * letter_, Ink::ink);
            },
            "not in source");
        if (reading_.mask)
            legend.add ([this] (const DrawingBox& box) { addWindow (box, Ink::target, 1.2, true); }, "target");
        legend.note ("dB re the strongest of each");
        return legend.rest();
    }

    void placePlot (const DrawingBox& area)
    {
        const double left = textWidth ("\u221280", letter_, false) + 0.9 * letter_;
        hasHertz_ = area.height >= leastForHertz * letter_;
        plot_ = { area.x + left, area.y + 0.7 * letter_, area.width - left - 0.6 * letter_,
                  area.height - (hasHertz_ ? 3.9 : 2.6) * letter_ };
        const double lowestHz = reading_.bars.empty() ? 50.0 : std::max (10.0, 0.8 * reading_.bars.front().frequencyHz);
        across_ = { lowestHz, highestHz, plot_.x, plot_.right(), true };
        up_ = { lowestDb, highestDb(), plot_.bottom(), plot_.y, false };
        pen_.text ({ area.x, plot_.bottom() + numberRow * letter_ }, "no.", letter_, Ink::faintInk);
        if (hasHertz_)
            pen_.text ({ area.x, plot_.bottom() + hertzRow * letter_ }, "Hz", letter_, Ink::faintInk);
    }

    /// As far up as the mask wishes.
    double highestDb() const
    {
        double highest = usualHighestDb;
        if (reading_.mask)
            for (const auto& window : reading_.mask->windows)
                highest = std::max (highest, window.highestDb + 2.0);
        return std::min (highest, mostHighestDb);
    }

    void addWindow (const DrawingBox& box, Ink ink, double width, bool hasFloor)
    {
        pen_.fill (box, Ink::target, windowStrength);
        pen_.line ({ box.x, box.y }, { box.right(), box.y }, ink, width);
        if (hasFloor)
            pen_.line ({ box.x, box.bottom() }, { box.right(), box.bottom() }, ink, width);
    }

    void addWindow (double from, double to, const MaskWindow& window)
    {
        const double top = up_.at (window.highestDb);
        const bool isOut = isOutside (window);
        addWindow ({ from, top, to - from, up_.at (window.lowestDb) - top }, isOut ? Ink::notice : Ink::target,
                   isOut ? 2.2 : 1.2, ! window.isBound);
    }

    void addBands()
    {
        if (! reading_.mask)
            return;
        for (const auto& window : reading_.mask->windows)
            if (window.isBand)
                addWindow (across_.at (window.lowestHz), across_.at (window.highestHz), window);
    }

    void addBars()
    {
        double room = 20.0;
        for (std::size_t index = 0; index < reading_.bars.size(); ++index)
        {
            const double x = across_.at (reading_.bars[index].frequencyHz);
            const double before = index == 0 ? 2.0 * room : x - across_.at (reading_.bars[index - 1].frequencyHz);
            if (index + 1 < reading_.bars.size())
                room = across_.at (reading_.bars[index + 1].frequencyHz) - x;
            addBar (reading_.bars[index], x, room);
            addSpot (reading_.bars[index], x, before, room);
        }
    }

    void addBar (const Bar& bar, double x, double room)
    {
        const double width = std::clamp (0.72 * room, 1.2, 1.6 * letter_);
        if (const auto* const window = windowOf (reading_, bar))
        {
            const double half = std::max (2.0, std::min (0.5 * width + 0.35 * letter_, 0.48 * room));
            addWindow (x - half, x + half, *window);
        }
        if (bar.isAbsent)
        {
            if (room > 0.5 * letter_)
                pen_.ring ({ x, plot_.bottom() - 4.0 }, 0.28 * letter_, Ink::ink);
            return;
        }
        const double top = up_.at (bar.sourceDb);
        const DrawingBox behind { x - 0.5 * width, top, width, plot_.bottom() - top };
        pen_.fill (behind, Ink::source, DrawingPen::sourceStrength);
        if (width > 5.0)
            pen_.hatch (behind, Ink::source);
        const double resultTop = up_.at (bar.resultDb);
        const double narrow = std::max (1.0, 0.44 * width);
        pen_.fill ({ x - 0.5 * narrow, resultTop, narrow, plot_.bottom() - resultTop }, Ink::result);
    }

    void addSpot (const Bar& bar, double x, double before, double after)
    {
        constexpr double widest = 12.0;
        const double left = std::min (widest, 0.5 * before);
        const double right = std::min (widest, 0.5 * after);
        picture_.spots.push_back (
            { { x - left, plot_.y, left + right, plot_.height + (hasHertz_ ? 3.0 : 1.8) * letter_ },
              "Partial " + sentenceOf (bar),
              DrawingPoint { x, up_.at (bar.isAbsent ? lowestDb : bar.resultDb) } });
    }

    std::string sentenceOf (const Bar& bar) const
    {
        auto sentence =
            partialText (bar.harmonic) + ", " + formatForReading (bar.frequencyHz, Quantity::frequency) + ": ";
        if (bar.isAbsent)
            sentence += "not in the source";
        else
            sentence += decibelText (bar.resultDb) + " (" + volts (bar.resultPeakVolts) + " of "
                        + volts (bar.sourcePeakVolts) + " tapped)";
        if (const auto* const window = windowOf (reading_, bar))
            sentence += "; " + wishText (*window);
        return sentence;
    }

    std::string volts (double peak) const { return levelText (levelOfSine (peak, format_.unit), format_.unit); }

    std::string strongestSentence() const
    {
        if (reading_.bars.empty())
            return "No generator sounds for this key at the footages of this card; choose a key nearer to the middle.";
        if (reading_.strongest < 0)
            return "Nothing of the waves comes out here: there is no partial to show.";
        return "Strongest: partial " + sentenceOf (reading_.bars[static_cast<std::size_t> (reading_.strongest)]);
    }

    std::string targetSentence() const
    {
        const auto& mask = *reading_.mask;
        return mask.name + " (" + originText (mask.certainty, mask.source) + "): " + fitText (mask.fit)
               + (mask.isForKey ? "" : "; it is not meant for this key");
    }

    void addNumbers()
    {
        double lastRight = -1e9;
        for (const auto& bar : reading_.bars)
        {
            const auto text = partialText (bar.harmonic);
            const double width = textWidth (text, letter_, false);
            const double left = across_.at (bar.frequencyHz) - 0.5 * width;
            const double first = textWidth ("no.", letter_, false) + 0.4 * letter_;
            if (left < std::max (lastRight + 0.5 * letter_, first) || left + width > format_.width)
                continue;
            lastRight = left + width;
            pen_.text ({ left, plot_.bottom() + numberRow * letter_ }, text, letter_, Ink::ink);
        }
    }

    const HarmonicReading& reading_;
    const ReadingFormat& format_;
    double letter_;
    ReadingPicture picture_;
    DrawingPen pen_;
    DrawingBox plot_;
    bool hasHertz_ = true;
    PlotAxis across_;
    PlotAxis up_;
};

} // namespace

ReadingPicture harmonicPicture (const HarmonicReading& reading, const ReadingFormat& format)
{
    return HarmonicPlot (reading, format).picture();
}

std::string harmonicCsv (const HarmonicReading& reading)
{
    CsvText csv ({ "harmonic", "frequency_hz", "source_peak_v", "result_peak_v", "source_db_re_strongest",
                   "result_db_re_strongest", "target_lowest_db", "target_highest_db", "target_verdict" });
    for (const auto& bar : reading.bars)
    {
        csv.cell (bar.harmonic).cell (bar.frequencyHz).cell (bar.sourcePeakVolts).cell (bar.resultPeakVolts);
        csv.cell (bar.sourceDb).cell (bar.resultDb);
        if (const auto* const window = windowOf (reading, bar))
            csv.cell (window->lowestDb).cell (window->highestDb).cell (isOutside (*window) ? "outside" : "inside");
        else
            csv.cell ("").cell ("").cell ("");
        csv.end();
    }
    return csv.text();
}

} // namespace stopwright
