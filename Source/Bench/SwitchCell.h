// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PartCell.h"

namespace stopwright
{

/// A switch of the card: click, Space or Return opens and closes it. Threading: message thread.
class SwitchCell : public PartCell
{
public:
    SwitchCell (BenchSession& session, const std::string& name);

    void refresh() override;
    void toggle();

    void mouseDown (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;

protected:
    juce::String valueText() const override;
    void paintRing (juce::Graphics& graphics, juce::Rectangle<float> square) override;
    void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square) override;

private:
    bool isClosed() const;
};

} // namespace stopwright
