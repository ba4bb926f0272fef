// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sound/TestCards.h"

namespace stopwright::test
{

/// Frames of a second at the rate the engine is started with unless another is given.
constexpr int second = 48000;

/// Prepares an engine, gives it a card with a fresh reference and waits until it has come out of silence.
void start (Engine& engine, const Card& card, double rateHz = 48000.0);

/// The same with a key held until its attack is over; returns its level.
double startPlaying (Engine& engine, const Card& card, int key);

/// Level of the coming second, dB re full scale.
double steadyDb (Engine& engine);

} // namespace stopwright::test
