// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <optional>
#include <string>

namespace stopwright
{

/// One part or tap that can be taken hold of: in a list its symbol at the left; its name, what it stands at and its nodes
/// beside it. On a schematic, which draws symbols and texts itself, it is the ring round the symbol and the place of the
/// value. This plain kind has nothing to turn: an ideal amplifier, a transistor, a supply. Threading: message thread.
class PartCell : public juce::Component, public juce::SettableTooltipClient
{
public:
    static constexpr float width = 148.0f; ///< at lettering scale 1
    static constexpr float height = 70.0f;

    PartCell (BenchSession& session, std::string name);

    /// Brings what is shown up to date with the card.
    virtual void refresh();

    /// The list was scrolled by the wheel with the pointer here. Until it moves, a ring that comes to lie under it does
    /// not take the wheel: nobody should alter a part by scrolling past it.
    static void noteScroll (const juce::MouseEvent& event) { scrolledAt_ = event.getScreenPosition(); }

    static bool isScrolling (const juce::MouseEvent& event) { return event.getScreenPosition() == scrolledAt_; }

    const std::string& partName() const noexcept { return name_; }

    /// Where the ring and the value are on a schematic, within this component.
    struct Place
    {
        juce::Rectangle<int> ring;
        juce::Rectangle<int> value;
    };

    void setPlace (const Place& place);

    /// Told when it gets the keyboard.
    std::function<void()> onFocus;

    /// On a schematic only ring and value are this component.
    bool hitTest (int x, int y) override;

    void paint (juce::Graphics& graphics) override;
    void paintOverChildren (juce::Graphics& graphics) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

protected:
    virtual juce::String nameText() const;
    virtual juce::String valueText() const;
    virtual juce::String nodesText() const;
    virtual void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square);

    /// What lies round the symbol; nothing where there is nothing to turn.
    virtual void paintRing (juce::Graphics&, juce::Rectangle<float>) {}

    bool isOnSchematic() const noexcept { return place_.has_value(); }

    virtual juce::Rectangle<int> symbolArea() const;
    virtual juce::Rectangle<int> nameArea() const;
    virtual juce::Rectangle<int> valueArea() const;
    juce::Rectangle<int> nodesArea() const;

    BenchSession& session_;

private:
    juce::Rectangle<int> textArea() const;

    inline static juce::Point<int> scrolledAt_ { -1, -1 };

    std::string name_;
    std::optional<Place> place_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (PartCell)
};

} // namespace stopwright
