// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// STOPWRIGHT_WIDE before a free function compiles it twice, for any x86-64 and for processors with AVX2 and FMA, and
/// picks one when the program starts. For hot loops only: the call is indirect, so it must not be a tiny function.
///
/// The two versions may differ in the last bits, since the wide one fuses multiply and add. Expands to nothing on other
/// processors, with other compilers, and under a sanitizer, whose checks cannot run in the start-up selection.
#if defined(__x86_64__) && defined(__GNUC__) && ! defined(__clang__) && ! defined(STOPWRIGHT_SANITIZED)
#define STOPWRIGHT_WIDE __attribute__ ((target_clones ("arch=x86-64-v3", "default")))
#else
#define STOPWRIGHT_WIDE
#endif
