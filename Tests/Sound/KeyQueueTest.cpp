// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/KeyQueue.h"

#include <gtest/gtest.h>

#include <thread>

namespace stopwright
{
namespace
{

TEST (KeyQueue, KeepsOrderAndSaysWhenFull)
{
    KeyQueue queue;
    EXPECT_FALSE (queue.pop());
    for (int i = 0; i < static_cast<int> (KeyQueue::capacity); ++i)
        ASSERT_TRUE (queue.push ({ i, i % 2 == 0 }));
    EXPECT_FALSE (queue.push ({ 1, true }));

    for (int i = 0; i < static_cast<int> (KeyQueue::capacity); ++i)
    {
        const auto message = queue.pop();
        ASSERT_TRUE (message);
        EXPECT_EQ (message->key, i);
        EXPECT_EQ (message->down, i % 2 == 0);
    }
    EXPECT_FALSE (queue.pop());
    EXPECT_TRUE (queue.push ({ 5, true }));
    queue.clear();
    EXPECT_FALSE (queue.pop());
}

TEST (KeyQueue, LosesNothingBetweenTwoThreads)
{
    constexpr int count = 200000;
    KeyQueue queue;
    std::thread writer (
        [&queue]
        {
            for (int i = 0; i < count;)
                if (queue.push ({ i, true }))
                    ++i;
                else
                    std::this_thread::yield();
        });

    int expected = 0;
    bool inOrder = true;
    while (expected < count)
        if (const auto message = queue.pop())
            inOrder = inOrder && message->key == expected++;
        else
            std::this_thread::yield();
    writer.join();
    EXPECT_TRUE (inOrder);
}

} // namespace
} // namespace stopwright
