// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Netlist.h"
#include "Organ/AsFound.h"
#include "Tone/Wave.h"
#include "Units/Footage.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// A keyed bus a card draws its tone from: a wave at a footage, as a voltage behind a resistance, fed in at a node.
/// Units: volts peak to peak of the wave (see Wave for what that means per shape), ohms. polarity is 1 or -1.
struct Tap
{
    std::string name;
    Wave wave;
    Footage footage = Footage::parse ("8");
    double voltsPeakToPeak = 1.0;
    double sourceOhms = 0.0;
    std::string node;
    int polarity = 1;
    std::optional<AsFoundTap> asFound; ///< what was otherwise before the work

    bool operator== (const Tap&) const = default;
};

/// The keyed wave a tap takes. Threading: [control], like all below.
WaveSource waveSourceOf (const Tap& tap);

/// Gives a tap another keyed wave.
void takeWaveSource (Tap& tap, const WaveSource& source);

/// A proposed stop: the waves it taps, its network, and the node that goes to the bus.
/// Fields of a document that the program does not know are kept as JSON text and written back: keys are "card",
/// "tap:NAME", "tapAsFound:TAP" and "part:NAME" (see UnknownFields.h).
struct Card
{
    std::string name;
    std::string note; ///< free text: which wave it taps and why, which harmonic picture it aims at
    std::vector<Tap> taps;
    std::vector<Part> parts;
    std::string output;
    std::map<std::string, std::string> unknownFields;

    bool operator== (const Card&) const = default;
};

/// The card as a network: one source port per tap, in order, under the tap's name.
Netlist netlistOf (const Card& card);

/// The distinct waves of the taps, and which of them each tap uses.
struct TapWaves
{
    std::vector<Wave> waves;
    std::vector<int> waveOfTap;
};

TapWaves tapWavesOf (const Card& card);

/// The footages of the taps that are no octaves of 8 ft, each once: those an exact mutation needs generators for.
std::vector<Footage> mutationsOf (const Card& card);

} // namespace stopwright
