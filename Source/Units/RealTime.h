// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

/// STOPWRIGHT_REALTIME after the parameter list (and noexcept) of a function marks it as one that the audio thread calls:
/// no lock, no allocation, no file, no log, no throw, bounded time. A compiler that can check the promise (clang 20 and
/// later) is told of it; for all others it is a word to the reader.
#if defined(__clang__) && defined(__has_cpp_attribute)
#if __has_cpp_attribute(clang::nonblocking)
#define STOPWRIGHT_REALTIME [[clang::nonblocking]]
#endif
#endif

#ifndef STOPWRIGHT_REALTIME
#define STOPWRIGHT_REALTIME
#endif
