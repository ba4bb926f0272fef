// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/BlindTest.h"

#include "Units/Error.h"

namespace stopwright
{

BlindTest::BlindTest (std::uint64_t seed) : random_ (seed), x_ (draw()) {}

// The topmost bit: std::bernoulli_distribution may differ from library to library.
BlindTest::Trial BlindTest::draw() noexcept
{
    constexpr int topBit = 63;
    return (random_() >> topBit) != 0 ? Trial::b : Trial::a;
}

bool BlindTest::answer (Trial said) noexcept
{
    if (isFinished_)
        return false;
    ++rounds_;
    right_ += said == x_ ? 1 : 0;
    x_ = draw();
    return true;
}

BlindTestResult BlindTest::result() const
{
    if (! isFinished_)
        throw Error ("The blind test is still under way; finish it to see how many answers were right.");
    return { right_, rounds_ };
}

} // namespace stopwright
