// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/TextWidth.h"

#include "Sheet/LetterWidths.h"

namespace stopwright
{

namespace
{

constexpr double emOfOther = 1.0;
constexpr double ascent = 0.8;
constexpr double descent = 0.25;

double letterWidth (unsigned char letter, bool isBold)
{
    const auto& widths = isBold ? boldLetterWidths : plainLetterWidths;
    const std::size_t index = letter - 32U;
    return letter >= 32U && index < widths.size() ? widths[index] / 1000.0 : emOfOther;
}

bool isContinuation (unsigned char byte)
{
    return (byte & 0xc0U) == 0x80U;
}

} // namespace

double textWidth (std::string_view text, double size, bool isBold)
{
    double ems = 0.0;
    for (const char byte : text)
        if (! isContinuation (static_cast<unsigned char> (byte)))
            ems += letterWidth (static_cast<unsigned char> (byte), isBold);
    return ems * size;
}

DrawingBox textBox (const DrawnText& text)
{
    const double width = textWidth (text.text, text.size, text.isBold);
    const double shift = text.align == TextAlign::left ? 0.0 : text.align == TextAlign::centre ? width / 2.0 : width;
    return { text.at.x - shift, text.at.y - ascent * text.size, width, (ascent + descent) * text.size };
}

} // namespace stopwright
