// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/Lettering.h"

#include <cmath>

namespace stopwright
{

namespace
{

float& scaleInForce() noexcept
{
    static float factor = 1.0f;
    return factor;
}

juce::Font makeFont (float height, int style = juce::Font::plain)
{
    return juce::Font ("DejaVu Sans", height * Lettering::scale(), style);
}

} // namespace

std::function<void (const Lettering::Drawn&)> Lettering::observer;

float Lettering::scale() noexcept
{
    return scaleInForce();
}

void Lettering::setScale (float factor) noexcept
{
    scaleInForce() = juce::jlimit (smallestScale, largestScale, factor);
}

int Lettering::px (float length) noexcept
{
    return static_cast<int> (std::lround (length * scale()));
}

juce::Font Lettering::title()
{
    return makeFont (18.0f, juce::Font::bold);
}

juce::Font Lettering::body()
{
    return makeFont (15.0f);
}

juce::Font Lettering::strong()
{
    return makeFont (15.0f, juce::Font::bold);
}

juce::Font Lettering::small()
{
    return makeFont (12.5f);
}

juce::Font Lettering::caption()
{
    return makeFont (11.5f).withExtraKerningFactor (0.12f);
}

int Lettering::widthOf (const juce::Font& font, const juce::String& text)
{
    return static_cast<int> (std::ceil (font.getStringWidthFloat (text))) + 1;
}

juce::StringArray Lettering::wrapped (const juce::Font& font, const juce::String& text, int width)
{
    juce::StringArray lines;
    juce::String line;
    for (const auto& word : juce::StringArray::fromTokens (text, " ", {}))
    {
        const auto longer = line.isEmpty() ? word : line + " " + word;
        if (line.isNotEmpty() && widthOf (font, longer) > width)
        {
            lines.add (line);
            line = word;
        }
        else
        {
            line = longer;
        }
    }
    if (line.isNotEmpty())
        lines.add (line);
    return lines;
}

juce::String Lettering::fitted (const juce::Font& font, const juce::String& text, int width)
{
    if (widthOf (font, text) <= width)
        return text;
    auto shortened = text;
    while (shortened.isNotEmpty() && widthOf (font, shortened + "...") > width)
        shortened = shortened.dropLastCharacters (1).trimEnd();
    return shortened + "...";
}

void Lettering::draw (juce::Graphics& graphics,
                      const juce::Component& owner,
                      const juce::String& text,
                      const juce::Font& font,
                      juce::Rectangle<int> area,
                      juce::Justification justification)
{
    graphics.setFont (font);
    graphics.drawText (text, area, justification, true);

    if (observer && text.isNotEmpty())
    {
        const juce::Rectangle<int> size (widthOf (font, text) - 1, static_cast<int> (std::ceil (font.getAscent())));
        observer ({ &owner, text, area, justification.appliedToRectangle (size, area) });
    }
}

} // namespace stopwright
