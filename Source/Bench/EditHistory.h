// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchWork.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stopwright
{

/// Undo and redo of the work: every step keeps the whole of it before and after, so that undoing gives back exactly
/// what was there. Threading: [control].
class EditHistory
{
public:
    static constexpr std::size_t maxSteps = 500;

    /// Forgets everything.
    void clear();

    /// Notes a step; steps that were undone are forgotten. `what` is shown to the user ("R1 to 47k"). With a `mergeKey`
    /// equal to that of the last step the two become one (a wheel turned on without a pause); empty never merges.
    void add (const BenchWork& before,
              const BenchWork& after,
              const std::string& what,
              const std::string& mergeKey = {});

    bool canUndo() const noexcept { return position_ > 0; }

    bool canRedo() const noexcept { return position_ < steps_.size(); }

    /// What the next undo or redo is about; empty when there is none.
    std::string undoName() const;
    std::string redoName() const;

    /// The work to go back or forward to. Call only when possible.
    const BenchWork& undo();
    const BenchWork& redo();

private:
    struct Step
    {
        BenchWork before;
        BenchWork after;
        std::string what;
        std::string mergeKey;
    };

    std::vector<Step> steps_;
    std::size_t position_ = 0;
};

} // namespace stopwright
