// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sound/FlushToZero.h"

#if defined(__x86_64__)
#include <xmmintrin.h>
#endif

namespace stopwright
{

namespace
{

#if defined(__x86_64__)

// MXCSR: bit 15 flushes results, bit 6 takes operands as zero. Source: Intel 64 and IA-32 manual, volume 1, 10.2.3
constexpr std::uint64_t flushBits = 0x8040;

std::uint64_t readControl() noexcept
{
    return _mm_getcsr();
}

void writeControl (std::uint64_t control) noexcept
{
    _mm_setcsr (static_cast<unsigned int> (control));
}

#elif defined(__aarch64__)

// FPCR: bit 24, FZ. Source: Arm Architecture Reference Manual, FPCR
constexpr std::uint64_t flushBits = std::uint64_t { 1 } << 24U;

std::uint64_t readControl() noexcept
{
    std::uint64_t control = 0;
    asm volatile("mrs %0, fpcr" : "=r"(control));
    return control;
}

void writeControl (std::uint64_t control) noexcept
{
    asm volatile("msr fpcr, %0" : : "r"(control));
}

#else

constexpr std::uint64_t flushBits = 0;

std::uint64_t readControl() noexcept
{
    return 0;
}

void writeControl (std::uint64_t) noexcept {}

#endif

} // namespace

FlushToZero::FlushToZero() noexcept : before_ (readControl())
{
    writeControl (before_ | flushBits);
}

FlushToZero::~FlushToZero()
{
    writeControl (before_);
}

} // namespace stopwright
