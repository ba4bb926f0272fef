// SPDX-License-Identifier: GPL-3.0-or-later
//
// One thread plays, one sets phrases, stops and frees. To be run under ThreadSanitizer.
#include "Sound/PhraseDeck.h"

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <thread>

namespace stopwright
{
namespace
{

TEST (PhraseDeckThreads, PhrasesChangeWhileOnePlays)
{
    PhraseDeck deck;
    std::atomic<bool> isOver { false };
    std::array<bool, 128> isDown {}; // of the playing thread until it is joined
    int presses = 0;
    std::thread audio (
        [&]
        {
            bool isLast = false;
            while (! isLast)
            {
                isLast = isOver; // one block more, for what was set last
                deck.begin();
                while (const auto event = deck.next (64))
                {
                    if (event->kind == PhraseEvent::Kind::releaseAll)
                        isDown.fill (false);
                    else if (event->kind == PhraseEvent::Kind::key)
                        isDown[static_cast<std::size_t> (event->key.key)] = event->key.down;
                    presses += event->kind == PhraseEvent::Kind::key && event->key.down ? 1 : 0;
                }
            }
        });
    for (int round = 0; round < 600; ++round)
    {
        deck.setLoop (round % 3 == 0);
        deck.play ({ .keys = { { 0.0, round % 128, true }, { 0.002, 60, true } }, .seconds = 0.1 });
        while (deck.isPlaying() && round % 4 != 0 && deck.positionSeconds() <= 0.0)
            std::this_thread::yield();
        if (round % 5 == 0)
            deck.stop();
        deck.collect();
    }
    deck.stop();
    isOver = true;
    audio.join();
    EXPECT_GT (presses, 200);
    for (const bool down : isDown)
        EXPECT_FALSE (down);
}

} // namespace
} // namespace stopwright
