// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/LoadedStops.h"

#include "Organ/WholeRailCard.h"
#include "Study/HarmonicTable.h"
#include "Support/Random.h"

#include <array>

namespace stopwright::test
{

MixingBus virtualEarth()
{
    MixingBus bus;
    bus.kind = BusKind::virtualEarth;
    bus.feedbackOhms = 47e3;
    return bus;
}

Card buffered (Card card)
{
    card.parts.push_back ({ "Follower", { card.output, "buffered", "buffered" }, OpAmp {}, 0.0 });
    card.output = "buffered";
    return card;
}

Card randomCard (Random& random)
{
    constexpr std::array waves { WaveKind::square, WaveKind::staircase, WaveKind::sawtooth };
    const std::array<std::string, 3> footages { "8", "4", "16" };
    Card card;
    card.name = "Random";
    const int taps = random.integer (1, 2);
    for (int index = 0; index < taps; ++index)
    {
        Tap tap;
        tap.name = "W" + std::to_string (index);
        tap.wave.kind = waves[static_cast<std::size_t> (random.integer (0, 2))];
        tap.footage = Footage::parse (footages[static_cast<std::size_t> (random.integer (0, 2))]);
        tap.voltsPeakToPeak = random.uniform (0.1, 2.0);
        tap.sourceOhms = random.logUniform (100.0, 10e3);
        tap.polarity = random.chance (0.5) ? 1 : -1;
        tap.node = "n" + std::to_string (index);
        card.taps.push_back (tap);
    }
    const int sections = random.integer (2, 4);
    for (int index = 0; index < sections; ++index)
    {
        const auto number = std::to_string (index);
        const auto next = "n" + std::to_string (index + 1);
        card.parts.push_back (
            { "R" + number, { "n" + number, next }, Resistor { random.logUniform (1e3, 220e3) }, 0.0 });
        if (random.chance (0.3))
            card.parts.push_back (
                { "L" + number, { next, "0" }, Inductor { random.uniform (0.3, 3.0), 200.0, 0.0 }, 0.0 });
        card.parts.push_back ({ "C" + number, { next, "0" }, Capacitor { random.logUniform (1e-9, 47e-9) }, 0.0 });
    }
    card.output = "n" + std::to_string (sections);
    return card;
}

TestOrgan randomOrgan (Random& random, const MixingBus& bus, int stops)
{
    auto organ = emptyOrgan (bus);
    organ.instrument.divisions = { { "Upper", 72, 73, 1 } };
    for (int index = 0; index < stops; ++index)
    {
        StopTablet& stop = organ.add ("Stop " + std::to_string (index), randomCard (random), "Upper", "Bus",
                                      random.logUniform (10e3, 470e3));
        stop.drawn = random.chance (0.5);
        stop.whenRetired = random.chance (0.5) ? WhenRetired::open : WhenRetired::grounded;
        stop.polarity = random.chance (0.5) ? 1 : -1;
    }
    return organ;
}

double wholeRailVolts (TestOrgan organ, std::size_t stop, int key)
{
    organ.instrument.stops[stop].drawn = true;
    for (std::size_t other = 0; other < organ.cards.ofStops.size(); ++other)
        for (Tap& tap : organ.cards.ofStops[other]->taps)
            tap.voltsPeakToPeak = other == stop ? tap.voltsPeakToPeak : 0.0;
    const auto division = organ.instrument.stops[stop].division;
    const Card whole = wholeRailCard (organ, division);
    return rmsVolts (harmonicTable (whole, keySourceOf (organ.instrument, division, whole), key));
}

} // namespace stopwright::test
