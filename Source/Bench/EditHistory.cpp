// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/EditHistory.h"

namespace stopwright
{

void EditHistory::clear()
{
    steps_.clear();
    position_ = 0;
}

void EditHistory::add (const BenchWork& before,
                       const BenchWork& after,
                       const std::string& what,
                       const std::string& mergeKey)
{
    const bool merges =
        ! mergeKey.empty() && position_ == steps_.size() && position_ > 0 && steps_.back().mergeKey == mergeKey;
    steps_.resize (position_);

    if (merges)
    {
        steps_.back().after = after;
        steps_.back().what = what;
        return;
    }

    if (steps_.size() == maxSteps)
        steps_.erase (steps_.begin());
    steps_.push_back ({ before, after, what, mergeKey });
    position_ = steps_.size();
}

std::string EditHistory::undoName() const
{
    return canUndo() ? steps_[position_ - 1].what : std::string {};
}

std::string EditHistory::redoName() const
{
    return canRedo() ? steps_[position_].what : std::string {};
}

const BenchWork& EditHistory::undo()
{
    return steps_[--position_].before;
}

const BenchWork& EditHistory::redo()
{
    return steps_[position_++].after;
}

} // namespace stopwright
