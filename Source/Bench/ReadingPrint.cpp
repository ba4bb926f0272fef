// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingPrint.h"

#include "Sheet/HarmonicDrawing.h"
#include "Sheet/ReadingWords.h"
#include "Sheet/ResponseDrawing.h"
#include "Sheet/StageDrawing.h"

namespace stopwright
{

namespace
{

std::string stagePlace (const StageReading& reading, bool isShort)
{
    auto text = reading.drawn.front();
    if (reading.drawn.size() > 1)
        text.append (" and ").append (std::to_string (reading.drawn.size() - 1)).append (" more");
    if (isShort)
        return text;
    if (reading.keys == StageKeys::everyKey)
        return text + " drawn, every key held";
    return text.append (" drawn, ")
        .append (std::to_string (reading.held.size()))
        .append (" notes on ")
        .append (reading.division);
}

} // namespace

const char* readingName (ReadingKind kind) noexcept
{
    constexpr std::array names { "Harmonics", "Response", "Wave", "Compass", "Stages" };
    return names[static_cast<std::size_t> (kind)];
}

ReadingPicture readingPicture (const ReadingResult& result,
                               const ReadingChoices& choices,
                               std::span<const std::string> clipped,
                               const ReadingFormat& format)
{
    if (const auto* const harmonics = result.as<HarmonicReading>())
        return harmonicPicture (*harmonics, format);
    if (const auto* const response = result.as<ResponseReading>())
        return responsePicture (*response, choices.hasPhase, format);
    if (const auto* const wave = result.as<WaveReading>())
        return wavePicture (*wave, choices.wave, format);
    if (const auto* const rows = result.as<ReadingResult::Compass>())
        return compassPicture (*rows, choices.level, result.key, format);
    if (const auto* const stages = result.as<StageReading>())
        return stagePicture (*stages, clipped, format);
    return {};
}

std::string readingCsv (const ReadingResult& result, const ReadingChoices& choices)
{
    if (const auto* const harmonics = result.as<HarmonicReading>())
        return harmonicCsv (*harmonics);
    if (const auto* const response = result.as<ResponseReading>())
        return responseCsv (*response);
    if (const auto* const wave = result.as<WaveReading>())
        return waveCsv (*wave, choices.wave);
    if (const auto* const rows = result.as<ReadingResult::Compass>())
        return compassCsv (*rows);
    if (const auto* const stages = result.as<StageReading>())
        return stageCsv (*stages);
    return {};
}

std::string readingPlace (const ReadingResult& result, bool isShort)
{
    if (const auto* const stages = result.as<StageReading>())
        return stagePlace (*stages, isShort);
    if (result.as<ReadingResult::Compass>() != nullptr)
        return isShort ? "Every key, at " + result.place
                       : "Every key, at " + result.place + "; " + keyText (result.key, result.keyHz) + " is marked";
    const auto key = keyText (result.key, result.keyHz);
    return isShort ? key : key + ", at " + result.place;
}

} // namespace stopwright
