// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchPages.h"
#include "Bench/BenchSession.h"
#include "Bench/WorkKeeper.h"

#include <functional>

namespace stopwright
{

/// Asks about the unsaved work of runs that did not end in good order, one after the other. Threading: message thread.
class LeftWorkActions
{
public:
    LeftWorkActions (BenchSession& session, WorkKeeper& keeper, BenchPages& pages);

    /// Asks until nothing is left to ask about, or some of it was taken back; then runs `next`. At once when nothing is.
    void askAndGoOn (std::function<void()> next);

private:
    void ask (const WorkKeeper::Left& left, const std::filesystem::path& file);
    void takeBack (const WorkKeeper::Left& left);
    void goOn();

    BenchSession& session_;
    WorkKeeper& keeper_;
    BenchPages& pages_;
    std::function<void()> next_;
};

} // namespace stopwright
