// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/StopWork.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stopwright
{

/// Undo and redo of the work on a stop: every step keeps the whole of it before and after, so that undoing gives back exactly
/// what was there. Threading: [control].
class EditHistory
{
public:
    static constexpr std::size_t maxSteps = 1000;

    /// Forgets everything.
    void clear();

    /// Notes a step; steps that were undone are forgotten. `what` is shown to the user ("R1 to 47k"). With a `mergeKey`
    /// equal to that of the last step the two become one (a wheel turned on without a pause); empty never merges.
    void add (const StopWork& before, const StopWork& after, const std::string& what, const std::string& mergeKey = {});

    bool canUndo() const noexcept { return position_ > 0; }

    bool canRedo() const noexcept { return position_ < steps_.size(); }

    /// What the next undo or redo is about; empty when there is none.
    std::string undoName() const;
    std::string redoName() const;

    /// The work to go back or forward to. Call only when possible.
    const StopWork& undo();
    const StopWork& redo();

private:
    struct Step
    {
        StopWork before;
        StopWork after;
        std::string what;
        std::string mergeKey;
    };

    std::vector<Step> steps_;
    std::size_t position_ = 0;
};

} // namespace stopwright
