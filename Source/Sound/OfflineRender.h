// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/KeySource.h"
#include "Sound/Phrase.h"

#include <functional>
#include <span>

namespace stopwright
{

enum class RenderScale
{
    volts,    ///< 1.0 is one volt at the card's output, unlimited
    listening ///< as the live engine plays it at its start level, limiter included
};

struct RenderRequest
{
    Phrase phrase;
    double rateHz = 48000.0;
    RenderScale scale = RenderScale::volts;
};

/// Renders a card away from any device: `sink` gets the samples block by block; `progress` (may be empty) gets
/// 0 .. 1 and returns false to stop. Returns false when stopped. The same kernel as live sound; volts come from a finer
/// internal rate (StreamSpec::fineInternalRateHz), so that partials agree with harmonicTable up to 10 kHz. What the kernel
/// delays is taken off: the first sample is the phrase's first.
/// Threading: [control]. Fails: Error with a sentence (unsound card, a non-finite sample).
bool renderOffline (const Card& card,
                    const KeySource& keySource,
                    const RenderRequest& request,
                    const std::function<void (std::span<const float>)>& sink,
                    const std::function<bool (double)>& progress = {});

} // namespace stopwright
