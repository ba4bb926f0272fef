// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WorkerNice.h"

#include <sys/resource.h>
#include <unistd.h>

namespace stopwright
{

void stepBack() noexcept
{
    constexpr int niceness = 10;
    setpriority (PRIO_PROCESS, static_cast<id_t> (gettid()), niceness); // where it is refused, all goes on as before
}

} // namespace stopwright
