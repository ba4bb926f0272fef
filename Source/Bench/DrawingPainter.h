// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/Palette.h"
#include "Sheet/Drawing.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Paints a drawing in the colours of a palette, a unit of it as a unit of the graphics. Threading: message thread.
class DrawingPainter
{
public:
    /// Without an owner, Lettering's observer is not told of the texts.
    DrawingPainter (juce::Graphics& graphics, const Palette& palette, const juce::Component* owner = nullptr);

    /// The drawing's upper left corner comes to the graphics' origin.
    void paint (const Drawing& drawing);

    /// What an ink looks like. Range: strength 0 .. 1.
    static juce::Colour colourOf (Ink ink, const Palette& palette, double strength = 1.0);

    /// The drawing as an image on a ground of the sheet's colour. Range: pixelsPerUnit > 0.
    static juce::Image imageOf (const Drawing& drawing, const Palette& palette, double pixelsPerUnit, double margin);

private:
    void paint (const DrawnArea& area);
    void paint (const DrawnLine& line);
    void paint (const DrawnText& text);
    void hatch (const DrawnArea& area);

    juce::Graphics& graphics_;
    const Palette& palette_;
    const juce::Component* owner_;
};

} // namespace stopwright
