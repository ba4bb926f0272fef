// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/BlindTestResult.h"

#include <cstdint>
#include <random>

namespace stopwright
{

/// A blind listening test of two trials of a stop, as ABX: in each round the listener may hear A, B and X as often and in
/// whatever order he likes, X being one of the two, and says which one it is.
///
/// ABX and not a hidden pair X and Y of which one has to be called A: there the listener must carry in his head what A
/// sounds like, and a difference that he hears can be lost because he has its name wrong. Here A and B stay at hand under
/// their own letters, so the one thing asked is whether X is the same as one he can hear this moment.
///
/// Each round is a fair draw of its own: never evened out, or the last rounds would tell themselves. The score comes out
/// only when the test is finished, so that it cannot be stopped at a lucky moment, and with no more answers after.
/// What plays X must do for it the very same as for A or B (the same cross-fade, the same gain), also when it is what
/// sounds already; and readings of the stop may not be seen, or the eye will answer.
/// Threading: [control].
/// Source: W. A. Munson and M. B. Gardner, "Standardizing auditory tests", Journal of the Acoustical Society of America 22
/// (1950); from memory.
class BlindTest
{
public:
    enum class Trial
    {
        a,
        b
    };

    /// The same seed gives the same draws, so take one from std::random_device.
    explicit BlindTest (std::uint64_t seed);

    /// Counted from 1: the round under way, or the one that was when the test was finished.
    int round() const noexcept { return rounds_ + 1; }

    /// What X is in this round. For the sound alone: nothing that is seen may depend on it.
    Trial x() const noexcept { return x_; }

    /// Ends the round and draws the next. False when the test is finished.
    bool answer (Trial said) noexcept;

    /// No more answers; the round under way does not count.
    void finish() noexcept { isFinished_ = true; }

    bool isFinished() const noexcept { return isFinished_; }

    /// Fails: Error before finish().
    BlindTestResult result() const;

private:
    Trial draw() noexcept;

    std::mt19937_64 random_;
    Trial x_;
    int rounds_ = 0; ///< answered
    int right_ = 0;
    bool isFinished_ = false;
};

} // namespace stopwright
