// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// The type of the window: one family in few sizes, all multiplied by one factor that the user chooses. Every text that
/// the window paints itself goes through draw, so that a test can see whether it had room.
/// Threading: message thread.
class Lettering
{
public:
    static constexpr float smallestScale = 1.0f;
    static constexpr float largestScale = 1.5f;

    static float scale() noexcept;
    static void setScale (float factor) noexcept;

    /// A length in pixels at scale 1, at the scale in force.
    static int px (float length) noexcept;

    static juce::Font title();
    static juce::Font body();
    static juce::Font strong();
    static juce::Font small();
    static juce::Font caption(); ///< spaced capitals over a group; the caller passes capitals

    static int widthOf (const juce::Font& font, const juce::String& text);

    /// A text as lines no wider than `width`, broken at its spaces; a word that is wider stands on a line of its own.
    static juce::StringArray wrapped (const juce::Font& font, const juce::String& text, int width);

    /// A text if it is no wider than `width`, else its beginning with "..." behind it.
    static juce::String fitted (const juce::Font& font, const juce::String& text, int width);

    /// One line of text in `area` of `owner`, in the current colour.
    static void draw (juce::Graphics& graphics,
                      const juce::Component& owner,
                      const juce::String& text,
                      const juce::Font& font,
                      juce::Rectangle<int> area,
                      juce::Justification justification = juce::Justification::centredLeft);

    /// One drawn text, for a test: where it was, and the room it needed.
    struct Drawn
    {
        const juce::Component* owner = nullptr;
        juce::String text;
        juce::Rectangle<int> area;   ///< given
        juce::Rectangle<int> needed; ///< the text itself, within or beyond the area
    };

    /// Told of every text drawn; empty for none.
    static std::function<void (const Drawn&)> observer;
};

} // namespace stopwright
