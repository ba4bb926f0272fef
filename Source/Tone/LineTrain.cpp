// SPDX-License-Identifier: GPL-3.0-or-later
#include "Tone/LineTrain.h"

#include "Units/WideVector.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr int lanes = LineTrain::overrun + 1;

/// Whole vectors only: what is too much is overwritten by the next line.
[[gnu::always_inline]] inline void drawLine (float* out, int count, float value, float slope) noexcept
{
    std::array<float, lanes> ramp {};
    for (int lane = 0; lane < lanes; ++lane)
        ramp[static_cast<std::size_t> (lane)] = value + slope * static_cast<float> (lane);

    for (int frame = 0; frame < count; frame += lanes)
    {
        const float risen = slope * static_cast<float> (frame);
        for (int lane = 0; lane < lanes; ++lane)
            out[frame + lane] = ramp[static_cast<std::size_t> (lane)] + risen;
    }
}

} // namespace

// This runs for every corner of every generator, so a line's length in frames is not divided out anew: with `since` up to
// one sample it is one of two numbers.
STOPWRIGHT_WIDE
void drawLines (float* block, int count, const LineTrain& train) noexcept
{
    const std::int64_t sample = train.unitsPerSample;
    const std::array<std::int64_t, 2> frames { train.lines[0].units / sample, train.lines[1].units / sample };
    const std::array<std::int64_t, 2> rests { train.lines[0].units % sample, train.lines[1].units % sample };

    auto line = static_cast<std::size_t> (train.first);
    std::int64_t framesBefore = (train.since - 1) / sample;
    std::int64_t since = train.since - framesBefore * sample;
    for (int done = 0; done < count;)
    {
        const auto& drawn = train.lines[line];
        const bool isOneMore = since <= rests[line];
        const auto run =
            static_cast<int> (std::min<std::int64_t> (frames[line] + (isOneMore ? 1 : 0) - framesBefore, count - done));
        const auto begun = static_cast<double> (since + framesBefore * sample);
        drawLine (block + done, run, static_cast<float> (drawn.value + drawn.perUnit * begun),
                  static_cast<float> (drawn.perUnit * static_cast<double> (sample)));
        done += run;

        since += (isOneMore ? sample : 0) - rests[line];
        framesBefore = 0;
        line = 1 - line;
        while (since > train.lines[line].units)
        {
            since -= train.lines[line].units;
            line = 1 - line;
        }
    }
}

} // namespace stopwright
