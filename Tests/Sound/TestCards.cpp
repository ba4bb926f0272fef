// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/TestCards.h"

#include "Organ/CardDocument.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace stopwright::test
{

namespace
{

Tap squareTap (const std::string& name, const std::string& footage, double volts, const std::string& node)
{
    Tap tap;
    tap.name = name;
    tap.footage = Footage::parse (footage);
    tap.voltsPeakToPeak = volts;
    tap.node = node;
    return tap;
}

Part resistor (const std::string& name, const std::string& a, const std::string& b, double ohms)
{
    return { .name = name, .nodes = { a, b }, .value = Resistor { ohms } };
}

Part capacitor (const std::string& name, const std::string& a, const std::string& b, double farads)
{
    return { .name = name, .nodes = { a, b }, .value = Capacitor { .farads = farads } };
}

Part amplifier (const std::string& name, const std::string& plus, const std::string& minus, const std::string& out)
{
    return { .name = name, .nodes = { plus, minus, out }, .value = OpAmp {} };
}

using Maker = std::function<void (std::span<const KeyEvent>, int start, int count)>;

/// Cuts a run into blocks and deals out the events.
void inBlocks (int frames, const std::vector<KeyEvent>& events, int block, const Maker& make)
{
    std::vector<KeyEvent> inBlock;
    for (int start = 0; start < frames; start += block)
    {
        const int count = std::min (block, frames - start);
        inBlock.clear();
        for (KeyEvent event : events)
            if (event.frameOffset >= start && event.frameOffset < start + count)
            {
                event.frameOffset -= start;
                inBlock.push_back (event);
            }
        make (inBlock, start, count);
    }
}

} // namespace

Card presetCard (const std::string& name)
{
    return readCard (std::string (STOPWRIGHT_ROOT) + "/Presets/" + name + ".json");
}

std::vector<std::string> presetNames()
{
    return { "Krummhorn8",  "Clarinet8", "Oboe8",         "Trumpet8", "VoxHumana8",
             "FrenchHorn8", "Diapason8", "StoppedFlute8", "String8",  "Quint2-2-3" };
}

Card plainCard()
{
    Card card;
    card.name = "Plain";
    card.taps = { squareTap ("W1", "8", 2.0, "in") };
    card.parts = { resistor ("R1", "in", "out", 10e3), resistor ("R2", "out", "0", 10e3) };
    card.output = "out";
    return card;
}

Card nearSineCard()
{
    Card card;
    card.name = "Near sine";
    card.taps = { squareTap ("W1", "8", 2.0, "in") };
    card.parts = { resistor ("Ra", "in", "a", 10e3),  capacitor ("Ca", "a", "0", 68e-9),
                   amplifier ("U1", "a", "ua", "ua"), resistor ("Rb", "ua", "b", 10e3),
                   capacitor ("Cb", "b", "0", 68e-9), amplifier ("U2", "b", "ub", "ub"),
                   resistor ("Rc", "ub", "c", 10e3),  capacitor ("Cc", "c", "0", 68e-9),
                   amplifier ("U3", "c", "uc", "uc"), resistor ("R", "uc", "out", 100e3),
                   capacitor ("C", "out", "0", 10e-9) };
    card.output = "out";
    return card;
}

Card runawayCard()
{
    // Sallen-Key low-pass of equal parts: it oscillates when the gain 1 + Rf / Rg exceeds 3.
    Card card;
    card.name = "Runaway";
    card.taps = { squareTap ("W1", "8", 1.0, "in") };
    card.parts = { resistor ("R1", "in", "a", 10e3),
                   resistor ("R2", "a", "b", 10e3),
                   capacitor ("C1", "a", "out", 10e-9),
                   capacitor ("C2", "b", "0", 10e-9),
                   { .name = "U1",
                     .nodes = { "b", "m", "out" },
                     .value = OpAmp { .gainBandwidthHz = 1e6, .openLoopDb = {}, .rails = {} } },
                   resistor ("Rg", "m", "0", 10e3),
                   resistor ("Rf", "out", "m", 10e3) };
    card.output = "out";
    return card;
}

Card otherCard()
{
    Card card = plainCard();
    card.name = "Other";
    card.taps.push_back (squareTap ("W2", "4", 1.0, "in4"));
    card.parts.push_back (resistor ("R3", "in4", "out", 22e3));
    card.parts.push_back (capacitor ("C1", "out", "0", 10e-9));
    return card;
}

std::vector<double> renderVolts (CardVoice& voice, int frames, const std::vector<KeyEvent>& events, int block)
{
    std::vector<double> volts (static_cast<std::size_t> (frames));
    inBlocks (frames, events, block,
              [&] (std::span<const KeyEvent> inBlock, int start, int count)
              {
                  voice.process (inBlock, std::span (volts).subspan (static_cast<std::size_t> (start),
                                                                     static_cast<std::size_t> (count)));
              });
    return volts;
}

std::vector<double> renderHeard (Engine& engine, int frames, const std::vector<KeyEvent>& events, int block)
{
    std::vector<float> heard (static_cast<std::size_t> (frames));
    inBlocks (frames, events, block,
              [&] (std::span<const KeyEvent> inBlock, int start, int count)
              {
                  float* const channels[] = { heard.data() + start };
                  engine.process (inBlock, channels, count);
              });
    return { heard.begin(), heard.end() };
}

double peakOf (std::span<const double> samples)
{
    double peak = 0.0;
    for (const double sample : samples)
        peak = std::max (peak, std::abs (sample));
    return peak;
}

double rmsOf (std::span<const double> samples)
{
    double sum = 0.0;
    for (const double sample : samples)
        sum += sample * sample;
    return std::sqrt (sum / static_cast<double> (samples.size()));
}

double largestStep (std::span<const double> samples)
{
    double step = 0.0;
    for (std::size_t i = 1; i < samples.size(); ++i)
        step = std::max (step, std::abs (samples[i] - samples[i - 1]));
    return step;
}

} // namespace stopwright::test
