// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/KeySource.h"
#include "Sound/CardVoice.h"
#include "Sound/Engine.h"

#include <span>
#include <string>
#include <vector>

namespace stopwright::test
{

/// A card of Presets/ by its file name without the ending.
Card presetCard (const std::string& name);

/// All stop cards of Presets/.
std::vector<std::string> presetNames();

/// A 2 V square through 10k against 10k: 1 V peak to peak, flat.
Card plainCard();

/// A square through a low-pass so steep that hardly more than a sine is left of A3 = 220 Hz, then buffered into
/// R (100k) and C (10n): the classic case of a value turned while a tone sounds.
Card nearSineCard();

/// A low-pass about an amplifier of gain 2, sound as built; with Rf turned up from 10k to 100k it rings louder and louder
/// for ever.
Card runawayCard();

/// The plain card with another tap at 4 ft and another network: what an edited card may look like.
Card otherCard();

/// `frames` of a voice, with events given by frame over the whole length.
std::vector<double>
    renderVolts (CardVoice& voice, int frames, const std::vector<KeyEvent>& events = {}, int block = 64);

/// The same from the left channel of an engine.
std::vector<double> renderHeard (Engine& engine, int frames, const std::vector<KeyEvent>& events = {}, int block = 64);

double peakOf (std::span<const double> samples);
double rmsOf (std::span<const double> samples);
double largestStep (std::span<const double> samples);

} // namespace stopwright::test
