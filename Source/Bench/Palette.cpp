// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/Palette.h"

namespace stopwright
{

const Palette& Palette::day()
{
    static const Palette palette { juce::Colour (0xffece7da), juce::Colour (0xfffbf9f2), juce::Colour (0xff1b2430),
                                   juce::Colour (0xff55606b), juce::Colour (0xffbdb6a3), juce::Colour (0xffe3ddcd),
                                   juce::Colour (0xff0a5a94), juce::Colour (0xffa9bccb), juce::Colour (0xff8a3f7c),
                                   juce::Colour (0xffa83a00), juce::Colour (0xffc27600) };
    return palette;
}

const Palette& Palette::night()
{
    static const Palette palette { juce::Colour (0xff10181f), juce::Colour (0xff18242e), juce::Colour (0xffe9eef1),
                                   juce::Colour (0xffa3b3bf), juce::Colour (0xff41525f), juce::Colour (0xff263541),
                                   juce::Colour (0xff7cc0f0), juce::Colour (0xff4a6273), juce::Colour (0xffe0a6d2),
                                   juce::Colour (0xffff9a63), juce::Colour (0xffffc247) };
    return palette;
}

} // namespace stopwright
