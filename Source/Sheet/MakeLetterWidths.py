# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints LetterWidths.h: the advance widths of DejaVu Sans, plain and bold, for ASCII and a few signs.

Read from the font files' own tables (cmap format 4, hmtx, head; ISO/IEC 14496-22, Open Font Format).

    python3 Source/Sheet/MakeLetterWidths.py > Source/Sheet/LetterWidths.h
"""

import struct

FOLDER = "/usr/share/fonts/truetype/dejavu/"


def tables(data):
    count = struct.unpack(">H", data[4:6])[0]
    rows = (struct.unpack(">4sLLL", data[12 + 16 * i:28 + 16 * i]) for i in range(count))
    return {tag.decode(): data[start:start + length] for tag, _, start, length in rows}


def glyph_of(cmap, code):
    count = struct.unpack(">H", cmap[2:4])[0]
    for i in range(count):
        platform, encoding, start = struct.unpack(">HHL", cmap[4 + 8 * i:12 + 8 * i])
        if (platform, encoding) == (3, 1):
            break
    part = cmap[start:]
    segments = struct.unpack(">H", part[6:8])[0] // 2
    words = struct.unpack(">%dH" % ((len(part) - 14) // 2), part[14:14 + (len(part) - 14) // 2 * 2])
    ends, starts = words[:segments], words[segments + 1:2 * segments + 1]
    deltas, offsets = words[2 * segments + 1:3 * segments + 1], words[3 * segments + 1:]
    for s in range(segments):
        if starts[s] <= code <= ends[s]:
            if offsets[s] == 0:
                return (code + deltas[s]) & 0xffff
            glyph = offsets[s + offsets[s] // 2 + code - starts[s]]
            return (glyph + deltas[s]) & 0xffff if glyph else 0
    return 0


def widths(name):
    with open(FOLDER + name, "rb") as file:
        parts = tables(file.read())
    units = struct.unpack(">H", parts["head"][18:20])[0]
    metrics = struct.unpack(">H", parts["hhea"][34:36])[0]
    result = []
    for code in range(32, 127):
        glyph = min(glyph_of(parts["cmap"], code), metrics - 1)
        advance = struct.unpack(">H", parts["hmtx"][4 * glyph:4 * glyph + 2])[0]
        result.append((advance * 1000 + units - 1) // units)
    return result


def rows(values):
    lines = [", ".join(str(v) for v in values[i:i + 16]) for i in range(0, len(values), 16)]
    return ",\n    ".join(lines)


print("""// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace stopwright
{

// Written by MakeLetterWidths.py from the font files of DejaVu Sans: thousandths of an em, from the space to '~'.
// clang-format off
inline constexpr std::array<int, 95> plainLetterWidths {
    %s };

inline constexpr std::array<int, 95> boldLetterWidths {
    %s };
// clang-format on

} // namespace stopwright""" % (rows(widths("DejaVuSans.ttf")), rows(widths("DejaVuSans-Bold.ttf"))))
