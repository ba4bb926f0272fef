// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PartCell.h"
#include "Bench/RestReading.h"

namespace stopwright
{

/// A reading of the card at rest, beside the symbol of the device or the dot of the node. Nothing to turn.
/// Threading: message thread.
class RestCell : public PartCell
{
public:
    RestCell (BenchSession& session, RestReading reading);

    const RestReading& reading() const noexcept { return reading_; }

    void show (const RestReading& reading);

protected:
    juce::String nameText() const override;
    juce::String valueText() const override;
    juce::String nodesText() const override;
    void paintSymbol (juce::Graphics& graphics, juce::Rectangle<float> square) override;

private:
    RestReading reading_;
};

} // namespace stopwright
