// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KeyHands.h"
#include "Study/TrialLevels.h"

#include <memory>
#include <optional>

namespace stopwright
{

/// Takes trials in hand so that they are equally loud, for the keys that are held just then: by the measure that is shown.
/// Threading: message thread.
class TrialMatcher : private BenchSession::Listener
{
public:
    TrialMatcher (BenchSession& session, const KeyHands& hands);
    ~TrialMatcher() override;

    LevelMeasure measure() const noexcept { return measure_; }

    void setMeasure (LevelMeasure measure) { measure_ = measure; }

    /// The key that counts while none is held.
    void setKey (int key) { key_ = key; }

    /// How loud all that is drawn is with either trial. Nothing without two trials, or when it cannot be computed.
    std::optional<TrialComparison> compare();

    /// Fails: Error as BenchSession::takeTrial.
    void take (bool isB, bool alwaysFades = false);

    void flip() { take (! session_.isSecondTrial()); }

private:
    void sessionChanged (BenchSession::Change change) override;
    std::vector<HeldKey> heldKeys() const;
    TrialComparison compareNow();

    BenchSession& session_;
    const KeyHands& hands_;
    LevelMeasure measure_ = LevelMeasure::aWeighted;
    int key_ = 60;
    std::unique_ptr<TrialLevels> levels_; ///< of the instrument as it sounds; empty when it must be made anew
};

} // namespace stopwright
