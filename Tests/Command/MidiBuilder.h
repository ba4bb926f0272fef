// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

namespace stopwright
{

/// Bytes of standard MIDI files, put together by hand.
namespace midi
{

inline std::string bytes (std::initializer_list<int> values)
{
    std::string text;
    for (const int value : values)
        text += static_cast<char> (value);
    return text;
}

inline std::string bigEndian (unsigned value, int count)
{
    std::string text;
    for (int i = count - 1; i >= 0; --i)
        text += static_cast<char> ((value >> (8U * static_cast<unsigned> (i))) & 0xFFU);
    return text;
}

inline std::string chunk (const std::string& kind, const std::string& content)
{
    return kind + bigEndian (static_cast<unsigned> (content.size()), 4) + content;
}

inline std::string header (unsigned format, unsigned tracks, unsigned division)
{
    return chunk ("MThd", bigEndian (format, 2) + bigEndian (tracks, 2) + bigEndian (division, 2));
}

/// A track with its end.
inline std::string track (const std::string& events)
{
    return chunk ("MTrk", events + bytes ({ 0, 0xFF, 0x2F, 0 }));
}

} // namespace midi

} // namespace stopwright
