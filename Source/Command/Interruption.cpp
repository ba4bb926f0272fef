// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/Interruption.h"

#include <array>
#include <csignal>
#include <cstddef>

namespace stopwright
{

namespace
{

using Handler = void (*) (int);

constexpr std::array<int, 3> stopSignals { SIGINT, SIGTERM, SIGHUP };

volatile std::sig_atomic_t wanted = 0;
std::array<Handler, stopSignals.size()> handlersBefore {};
Handler fileSizeHandlerBefore = SIG_DFL;

extern "C" void noteStopSignal (int /*signal*/)
{
    wanted = 1;
}

} // namespace

Interruption::Interruption()
{
    wanted = 0;
    for (std::size_t i = 0; i < stopSignals.size(); ++i)
    {
        handlersBefore[i] = std::signal (stopSignals[i], noteStopSignal);
        if (handlersBefore[i] == SIG_IGN) // nohup and the like stay in force
            std::signal (stopSignals[i], SIG_IGN);
    }
    fileSizeHandlerBefore = std::signal (SIGXFSZ, SIG_IGN);
}

Interruption::~Interruption()
{
    for (std::size_t i = 0; i < stopSignals.size(); ++i)
        std::signal (stopSignals[i], handlersBefore[i]);
    std::signal (SIGXFSZ, fileSizeHandlerBefore);
}

bool Interruption::isWanted() const noexcept
{
    return wanted != 0;
}

} // namespace stopwright
