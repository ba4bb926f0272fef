// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TestVoice.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <cstddef>
#include <numbers>
#include <span>

namespace stopwright::test
{

InstrumentVoice voiceOf (const TestOrgan& organ)
{
    return { organ.instrument, organ.cards, StreamSpec {} };
}

double levelNow (Voice& voice, double hertz)
{
    constexpr int settleFrames = 9600;
    constexpr int measuredFrames = 24000;
    renderVoice (voice, settleFrames);
    return harmonicVolts (renderVoice (voice, measuredFrames), 48000.0, hertz);
}

std::vector<double> renderVoice (Voice& voice, int frames, int pieceFrames)
{
    std::vector<double> out (static_cast<std::size_t> (frames));
    for (std::size_t start = 0; start < out.size();)
    {
        const auto count = std::min (static_cast<std::size_t> (pieceFrames), out.size() - start);
        voice.renderPiece (std::span (out).subspan (start, count));
        start += count;
    }
    return out;
}

double harmonicVolts (const std::vector<double>& samples, double rateHz, double hertz)
{
    std::complex<double> sum = 0.0;
    double weights = 0.0;
    for (std::size_t frame = 0; frame < samples.size(); ++frame)
    {
        const double turn = 2.0 * std::numbers::pi * static_cast<double> (frame);
        const double weight = 1.0 - std::cos (turn / static_cast<double> (samples.size()));
        sum += weight * samples[frame] * std::polar (1.0, -turn * hertz / rateHz);
        weights += weight;
    }
    return 2.0 * std::abs (sum) / weights;
}

} // namespace stopwright::test
