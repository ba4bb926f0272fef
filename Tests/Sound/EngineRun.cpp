// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/EngineRun.h"

#include "Units/Decibels.h"

namespace stopwright::test
{

void start (Engine& engine, const Card& card, double rateHz)
{
    engine.prepare ({ .deviceRateHz = rateHz, .maxFrames = 512 });
    engine.setCard (card, keySourceForCardAlone (card), true);
    renderHeard (engine, second / 2);
}

double startPlaying (Engine& engine, const Card& card, int key)
{
    start (engine, card);
    engine.key (key, true);
    renderHeard (engine, second);
    return steadyDb (engine);
}

double steadyDb (Engine& engine)
{
    return toDecibels (rmsOf (renderHeard (engine, second)));
}

} // namespace stopwright::test
