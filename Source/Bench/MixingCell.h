// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PartCell.h"

namespace stopwright
{

/// The mixing resistor of the stop in hand and the bus that it leads to. Threading: message thread.
class MixingCell : public PartCell
{
public:
    explicit MixingCell (BenchSession& session);

protected:
    juce::String nameText() const override;
    juce::String valueText() const override;
    juce::String nodesText() const override;
    void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square) override;
};

} // namespace stopwright
