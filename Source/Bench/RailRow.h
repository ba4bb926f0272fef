// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>

namespace stopwright
{

/// One line of the stop list: a tablet as the contact that it is, open when retired and closed when drawn, with its name
/// and what there is to say of it; or the lamp of a stage. A click does what the line is for; a click on the mark at its
/// end takes a stop in hand. With the keyboard: up and down choose a line, Space or Return does it, right takes in hand.
/// Threading: message thread.
class RailRow : public juce::Component, public juce::SettableTooltipClient
{
public:
    enum class Sign
    {
        contact, ///< open or closed
        lamp     ///< a circle, or a triangle with a bar when it is lit
    };

    /// What is seen of it.
    struct Face
    {
        Sign sign = Sign::contact;
        juce::String name;
        juce::String note;     ///< second line; empty for none
        juce::String bus;      ///< which the stop goes to; empty for none
        juce::String shortBus; ///< the same as it stands in the line
        bool isOn = false;     ///< drawn, switched on, or lit
        bool isUsable = true;
        bool canBeTaken = false; ///< has the mark that takes it in hand
        bool isInHand = false;

        bool operator== (const Face&) const = default;
    };

    struct Actions
    {
        std::function<void()> use;
        std::function<void()> takeInHand;
        std::function<void (int)> move; ///< the focus by so many lines
        std::function<void()> focused;
    };

    RailRow (Face face, Actions actions);

    void setFace (const Face& face);

    const Face& face() const noexcept { return face_; }

    int height() const;

    /// Where the mark is that takes a stop in hand.
    juce::Rectangle<int> markArea() const;

    void paint (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseEnter (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void describe();
    void paintBus (juce::Graphics& graphics,
                   juce::Rectangle<int> line,
                   const juce::String& before,
                   const juce::Font& font) const;
    void paintContact (juce::Graphics& graphics, juce::Rectangle<float> area) const;
    void paintMark (juce::Graphics& graphics) const;

    Face face_;
    Actions actions_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (RailRow)
};

} // namespace stopwright
