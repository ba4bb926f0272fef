// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KeyHands.h"
#include "Study/TrialLevels.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace stopwright
{

/// Keeps the two trials of the stop in hand equally loud, by the measure that is shown and for the keys that are held: the
/// louder one is lowered, also while it is turned. Being a listener of the session, it is to be made before those that ask it.
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

    /// Compares again when other keys are held than before. Cheap when they are the same.
    void followKeys();

    /// How loud all that is drawn is with either trial. Nothing without two trials, or when it cannot be computed.
    const std::optional<TrialComparison>& comparison() const noexcept { return comparison_; }

    /// Told when the comparison became another one without a change of the session.
    std::function<void()> onComparison;

    /// Fails: Error as BenchSession::takeTrial.
    void take (bool isB, bool alwaysFades = false);

    void flip() { take (! session_.isSecondTrial()); }

private:
    void sessionChanged (BenchSession::Change change) override;
    std::vector<HeldKey> heldKeys() const;
    TrialComparison compareNow();
    void compare();
    void match();
    void matchAndTell();
    double gainDb (bool isB) const;

    BenchSession& session_;
    const KeyHands& hands_;
    LevelMeasure measure_ = LevelMeasure::aWeighted;
    int key_ = 60;
    std::vector<HeldKey> held_; ///< what the comparison is for; empty: for key_
    std::optional<TrialComparison> comparison_;
    std::unique_ptr<TrialLevels> levels_; ///< of the instrument as it sounds; empty when it must be made anew
};

} // namespace stopwright
