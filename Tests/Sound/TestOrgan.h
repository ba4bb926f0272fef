// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/InstrumentCards.h"
#include "Sound/InstrumentVoice.h"

#include <numbers>
#include <string>
#include <vector>

namespace stopwright::test
{

/// An instrument and the cards of its stops, put together for a test.
struct TestOrgan
{
    Instrument instrument;
    InstrumentCards cards;

    /// A stop of a division on a bus; returns its tablet for changes.
    StopTablet& add (const std::string& name,
                     const Card& card,
                     const std::string& division = "Upper",
                     const std::string& bus = "Bus",
                     double mixingOhms = 47e3);

    StopTablet& tablet (const std::string& name);
};

/// Two manuals of 61 keys and a pedal of 30, equal temperament, one bus of this kind and a preamp of gain 1 to a main
/// outlet; no stops.
TestOrgan emptyOrgan (const MixingBus& bus);

/// The demonstration organ with its cards.
TestOrgan larkfield();

/// A square of 1 V peak to peak on the bare tap: no part at all.
Card bareCard (const std::string& footage = "8", double volts = 1.0);

/// The bus of 100 kilohm, nothing else on it.
MixingBus passiveBus();

/// Played at 48 kHz.
InstrumentVoice voiceOf (const TestOrgan& organ);

/// The fundamental's peak volts of what sounds now at 48 kHz, after 0.2 s to settle.
double levelNow (Voice& voice, double hertz = 220.0);

/// Of the fundamental of a square of 1 V peak to peak.
inline constexpr double squareVolts = 2.0 / std::numbers::pi;

/// `frames` device frames of a voice from where it stands, in pieces of at most `pieceFrames`.
std::vector<double> renderVoice (Voice& voice, int frames, int pieceFrames = Voice::pieceFrames);

/// Peak volts of harmonic `number` of `hertz` in `samples`, by correlation over a Hann window.
double harmonicVolts (const std::vector<double>& samples, double rateHz, double hertz);

} // namespace stopwright::test
