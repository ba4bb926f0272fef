// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KeyHands.h"
#include "Bench/LatestTask.h"
#include "Bench/TrialPlace.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace stopwright
{

/// Keeps the two trials of the stop in hand equally loud, by the measure that is shown and for the keys that are held: the
/// louder one is lowered, also while it is turned. With many keys held a comparison takes longer than a frame of the window,
/// so that it is made beside it; a flip waits for the last one.
/// Threading: message thread.
class TrialMatcher : private BenchSession::Listener
{
public:
    TrialMatcher (BenchSession& session, const KeyHands& hands);
    ~TrialMatcher() override;

    LevelMeasure measure() const noexcept { return measure_; }

    void setMeasure (LevelMeasure measure);

    /// Told when it was set.
    std::function<void()> onMeasure;

    /// The key that counts while none is held.
    void setKey (int key);

    /// Compares again when other keys are held than before, or the sound runs at another rate. Cheap otherwise.
    void followKeys();

    /// How loud all that is drawn is with either trial, as last compared. Nothing without two trials, or when it cannot be
    /// computed.
    const std::optional<TrialComparison>& comparison() const noexcept { return comparison_; }

    /// Told when the comparison became another one.
    std::function<void()> onComparison;

    /// Waits for the comparison of what there is now.
    void finish() { task_.finish(); }

    /// Fails: Error as BenchSession::takeTrial.
    void take (bool isB, bool alwaysFades = false);

    void flip() { take (! session_.isSecondTrial()); }

private:
    void sessionChanged (BenchSession::Change change) override;
    std::vector<HeldKey> heldKeys() const;
    std::function<std::optional<TrialComparison> (const IsUnwanted&)> comparing();
    void compare();
    void takeComparison (std::optional<TrialComparison> comparison, int round);
    double gainDb (bool isB) const;

    BenchSession& session_;
    const KeyHands& hands_;
    LevelMeasure measure_ = LevelMeasure::aWeighted;
    int key_ = 60;
    std::vector<HeldKey> held_; ///< what the comparison is for; empty: for key_
    std::optional<TrialComparison> comparison_;
    std::shared_ptr<TrialPlace> place_; ///< of the instrument as it sounds; empty when it must be made anew
    double rateHz_ = 0.0;               ///< that place_ is for; 0 before there is one
    int round_ = 0; ///< of the two trials, their stop and what it stands in; a comparison from before is void
    LatestTask task_;
};

} // namespace stopwright
