// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/CompassDrawing.h"

#include "Sheet/ClippedCurve.h"
#include "Sheet/CsvText.h"
#include "Sheet/PictureLegend.h"
#include "Sheet/PlotAxis.h"
#include "Sheet/ReadingWords.h"
#include "Sheet/TextWidth.h"
#include "Units/Pitch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double dbPerShade = 10.0;
constexpr std::array<double, compassShades> strengths { 1.0, 0.78, 0.58, 0.4, 0.25, 0.12 };
constexpr int harmonics = static_cast<int> (CompassRow::harmonicCount);

class CompassPlot
{
public:
    CompassPlot (std::span<const CompassRow> rows, CompassLevel level, int keyInHand, const ReadingFormat& format)
        : rows_ (rows),
          level_ (level),
          keyInHand_ (keyInHand),
          format_ (format),
          letter_ (format.letter),
          pen_ (picture_.drawing)
    {}

    ReadingPicture picture()
    {
        const auto area = addLegend (beginPicture (picture_, format_));
        picture_.columnLength = 1 + CompassRow::harmonicCount;
        picture_.sentence = sentence();
        placePlots (area);
        if (rows_.empty() || map_.width < 4.0 * letter_ || map_.height < 2.0 * letter_)
            return std::move (picture_);
        ruleAcross (pen_, strip_, up_, decibelMarks (up_, letter_, ""), letter_);
        addKeyNames();
        for (std::size_t row = 0; row < rows_.size(); ++row)
            addKey (row);
        addLevelLine();
        addHarmonicNumbers();
        pen_.frame (strip_, Ink::hairline);
        pen_.frame (map_, Ink::hairline);
        return std::move (picture_);
    }

private:
    bool isDbu() const { return format_.unit == LevelUnit::dbu; }

    double volts (const CompassRow& row) const
    {
        return level_ == CompassLevel::rms ? row.level.rmsVolts : row.level.aWeightedVolts;
    }

    double decibels (const CompassRow& row) const
    {
        return levelOfRms (volts (row), isDbu() ? LevelUnit::dbu : LevelUnit::dbv);
    }

    std::string levelName() const
    {
        return std::string (isDbu() ? "dBu" : "dBV") + (level_ == CompassLevel::rms ? ", rms" : ", A-weighted");
    }

    DrawingBox addLegend (const DrawingBox& area)
    {
        PictureLegend legend (pen_, area, letter_);
        legend.add (
            [this] (const DrawingBox& box)
            {
                const double y = box.y + 0.5 * box.height;
                pen_.line ({ box.x, y }, { box.right(), y }, Ink::ink, 1.6);
            },
            levelName());
        legend.add ([this] (const DrawingBox& box) { addShades (box); },
                    "0 to " + signedText (-dbPerShade * compassShades, 0) + " dB re the strongest",
                    static_cast<double> (compassShades));
        return legend.rest();
    }

    /// All shades side by side, the fullest first.
    void addShades (const DrawingBox& box)
    {
        const double width = box.width / compassShades;
        for (int shade = 0; shade < compassShades; ++shade)
            pen_.fill ({ box.x + width * shade, box.y, width, box.height }, Ink::result,
                       strengths[static_cast<std::size_t> (shade)]);
        pen_.frame (box, Ink::hairline);
    }

    void placePlots (const DrawingBox& area)
    {
        constexpr double levelShare = 0.36;
        const double left = textWidth ("\u2212100", letter_, false) + 0.8 * letter_;
        const double gap = 1.2 * letter_;
        const double height = area.height - 0.7 * letter_ - 1.8 * letter_ - gap;
        strip_ = { area.x + left, area.y + 0.7 * letter_, area.width - left - 0.5 * letter_, levelShare * height };
        map_ = { strip_.x, strip_.bottom() + gap, strip_.width, height - strip_.height };

        double highest = -1e9;
        double lowest = 1e9;
        for (const auto& row : rows_)
        {
            if (! std::isfinite (decibels (row)))
                continue;
            highest = std::max (highest, decibels (row));
            lowest = std::min (lowest, decibels (row));
        }
        if (highest < lowest)
            highest = lowest = 0.0;
        constexpr double step = 5.0;
        constexpr double mostShown = 60.0;
        const double top = step * std::ceil ((highest + 1.0) / step);
        const double bottom = std::max (top - mostShown, step * std::floor ((lowest - 1.0) / step));
        up_ = { bottom, top, strip_.bottom(), strip_.y, false };
    }

    double keyWidth() const { return map_.width / static_cast<double> (rows_.size()); }

    /// On whole points, so that neighbours of one shade show no seam.
    double xOf (std::size_t row) const { return std::round (map_.x + keyWidth() * static_cast<double> (row)); }

    double rowHeight() const { return map_.height / harmonics; }

    /// Harmonic 1 at the bottom. Range: harmonic 1 ..
    double yOf (int harmonic) const { return std::round (map_.bottom() - rowHeight() * harmonic); }

    void addKey (std::size_t row)
    {
        const auto& key = rows_[row];
        const double x = xOf (row);
        const double width = xOf (row + 1) - x;
        const auto name = keyText (key.key, key.fundamentalHz);
        const auto told = levelText (levelOfRms (volts (key), format_.unit), format_.unit)
                          + (level_ == CompassLevel::rms ? "" : ", A-weighted");
        picture_.spots.push_back ({ { x, strip_.y, width, strip_.height },
                                    name + ": " + told,
                                    DrawingPoint { x + 0.5 * keyWidth(), up_.at (decibels (key)) } });
        for (int harmonic = harmonics; harmonic >= 1; --harmonic)
        {
            const double db = key.harmonicDb[static_cast<std::size_t> (harmonic) - 1];
            const DrawingBox cell { x, yOf (harmonic), width, yOf (harmonic - 1) - yOf (harmonic) };
            if (const int shade = compassShade (db); shade < compassShades)
                pen_.fill (cell, Ink::result, strengths[static_cast<std::size_t> (shade)]);
            picture_.spots.push_back (
                { cell, name + ", partial " + std::to_string (harmonic) + ": " + decibelText (db), {} });
        }
        if (key.key == keyInHand_)
            addWedge (x + 0.5 * width);
    }

    /// Down onto the column of the key in hand.
    void addWedge (double x)
    {
        const double size = 0.45 * letter_;
        pen_.polygon (
            { { x - size, map_.y - 1.8 * size }, { x + size, map_.y - 1.8 * size }, { x, map_.y - 0.2 * size } },
            Ink::ink);
    }

    void addLevelPiece (const std::vector<DrawingPoint>& points)
    {
        for (auto& piece : clippedCurve (points, strip_.y, strip_.bottom()))
            pen_.path (std::move (piece), Ink::ink, 1.6);
    }

    void addLevelLine()
    {
        std::vector<DrawingPoint> points;
        for (std::size_t row = 0; row < rows_.size(); ++row)
        {
            if (std::isfinite (decibels (rows_[row])))
                points.push_back ({ xOf (row) + 0.5 * keyWidth(), up_.beyond (decibels (rows_[row])) });
            else
                addLevelPiece (std::exchange (points, {}));
            if (rows_[row].key == keyInHand_ && up_.contains (decibels (rows_[row])))
                pen_.disc (points.back(), 3.0, Ink::ink);
        }
        addLevelPiece (points);
    }

    void addKeyNames()
    {
        constexpr int octave = 12;
        double lastRight = -1e9;
        for (std::size_t row = 0; row < rows_.size(); ++row)
        {
            const int key = rows_[row].key;
            if (key % octave != 0)
                continue;
            const double x = xOf (row) + 0.5 * keyWidth();
            pen_.rule ({ x, strip_.y }, { x, strip_.bottom() });
            pen_.line ({ x, map_.bottom() }, { x, map_.bottom() + 0.3 * letter_ }, Ink::faintInk);
            const auto name = keyName (key);
            const double width = textWidth (name, letter_, false);
            const double left = std::min (x - 0.5 * width, format_.width - width);
            if (left < lastRight + 0.5 * letter_)
                continue;
            lastRight = left + width;
            pen_.text ({ left, map_.bottom() + 1.4 * letter_ }, name, letter_, Ink::faintInk);
        }
    }

    void addHarmonicNumbers()
    {
        double lastTop = 1e9;
        const std::vector<int> numbers = rowHeight() >= 1.1 * letter_ ? std::vector { 1, 2, 3, 4, 6, 8, 10, 12, 14, 16 }
                                                                      : std::vector { 1, 4, 8, 12, 16 };
        for (const int harmonic : numbers)
        {
            const double middle = yOf (harmonic) + 0.5 * rowHeight();
            if (middle + 0.45 * letter_ > lastTop)
                continue;
            lastTop = middle - 0.55 * letter_;
            pen_.text ({ map_.x - 0.4 * letter_, middle + 0.36 * letter_ }, std::to_string (harmonic), letter_,
                       Ink::faintInk, TextAlign::right);
        }
        pen_.text ({ 0.0, map_.bottom() + 1.4 * letter_ }, "no.", letter_, Ink::faintInk);
    }

    /// Where the level is highest and lowest.
    std::string sentence() const
    {
        const CompassRow* highest = nullptr;
        const CompassRow* lowest = nullptr;
        for (const auto& row : rows_)
        {
            if (! std::isfinite (decibels (row)))
                continue;
            if (highest == nullptr || volts (row) > volts (*highest))
                highest = &row;
            if (lowest == nullptr || volts (row) < volts (*lowest))
                lowest = &row;
        }
        if (highest == nullptr)
            return "No key sounds here: the card's waves have no generators, or nothing of them comes out.";
        return "Loudest at " + keyName (highest->key) + ", softest at " + keyName (lowest->key) + ", "
               + signedText (decibels (*highest) - decibels (*lowest), 1) + " dB between them";
    }

    std::span<const CompassRow> rows_;
    CompassLevel level_;
    int keyInHand_;
    const ReadingFormat& format_;
    double letter_;
    ReadingPicture picture_;
    DrawingPen pen_;
    DrawingBox strip_;
    DrawingBox map_;
    PlotAxis up_;
};

} // namespace

int compassShade (double levelDb) noexcept
{
    constexpr double rounding = 1e-9;
    if (! (levelDb > -dbPerShade * compassShades))
        return compassShades;
    return std::clamp (static_cast<int> (std::floor (-levelDb / dbPerShade - rounding)), 0, compassShades - 1);
}

ReadingPicture
    compassPicture (std::span<const CompassRow> rows, CompassLevel level, int keyInHand, const ReadingFormat& format)
{
    return CompassPlot (rows, level, keyInHand, format).picture();
}

std::string compassCsv (std::span<const CompassRow> rows)
{
    CsvText csv ({ "key",       "fundamental_hz", "rms_v",       "a_weighted_rms_v",
                   "level_dbv", "level_dbva",     "centroid_hz", "h1_db",
                   "h2_db",     "h3_db",          "h4_db",       "h5_db",
                   "h6_db",     "h7_db",          "h8_db",       "h9_db",
                   "h10_db",    "h11_db",         "h12_db",      "h13_db",
                   "h14_db",    "h15_db",         "h16_db" });
    for (const auto& row : rows)
    {
        csv.cell (keyName (row.key)).cell (row.fundamentalHz).cell (row.level.rmsVolts).cell (row.level.aWeightedVolts);
        csv.cell (row.level.dbv()).cell (row.level.dbva()).cell (row.level.centroidHz);
        for (const double db : row.harmonicDb)
            csv.cell (db);
        csv.end();
    }
    return csv.text();
}

} // namespace stopwright
