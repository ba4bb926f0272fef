// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// One part or tap on the sheet: its symbol at the left; its name, what it stands at and its nodes beside it.
/// This plain kind has nothing to turn: an ideal amplifier, a transistor, a supply. Threading: message thread.
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

    void paint (juce::Graphics& graphics) override;
    void paintOverChildren (juce::Graphics& graphics) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

protected:
    virtual juce::String nameText() const;
    virtual juce::String valueText() const;
    virtual juce::String nodesText() const;
    virtual void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square);

    juce::Rectangle<int> symbolArea() const;
    juce::Rectangle<int> textArea() const;
    juce::Rectangle<int> nameArea() const;
    juce::Rectangle<int> valueArea() const;
    juce::Rectangle<int> nodesArea() const;

    BenchSession& session_;

private:
    inline static juce::Point<int> scrolledAt_ { -1, -1 };

    std::string name_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (PartCell)
};

} // namespace stopwright
