// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KnobCell.h"
#include "Bench/LatestTask.h"
#include "Bench/LeadRow.h"
#include "Study/StopPlace.h"

#include <memory>
#include <optional>
#include <string>

namespace stopwright
{

/// Where the stop in hand stands on the rail: the bus it goes to, its mixing resistor as a knob, what it leaves on the bus
/// when it is retired, its level against another stop, what the others feel of it, and the way to the list of changes.
/// Threading: message thread.
class StopPlacePanel : public juce::Component, public juce::SettableTooltipClient, private BenchSession::Listener
{
public:
    static constexpr float height = 284.0f; ///< at lettering scale 1

    StopPlacePanel (BenchSession& session, const Series& series);
    ~StopPlacePanel() override;

    /// Opens the list of changes.
    std::function<void()> onChanges;

    KnobCell* mixing() const noexcept { return mixing_.get(); }

    LeadRow& bus() noexcept { return bus_; }

    LeadRow& retired() noexcept { return retired_; }

    LeadRow& neighbour() noexcept { return neighbour_; }

    juce::TextButton& changes() noexcept { return changes_; }

    /// "1.2 dB(A) softer, 0.8 dB rms softer", and what the others feel, a line each.
    juce::StringArray lines() const;

    /// Waits for what is being worked out; for tests.
    void finish() { task_.finish(); }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void rebuild();
    void fillChoices();
    void work();
    void forget();
    void moveTo (const std::string& bus);
    void retireAs (const std::string& words);
    void countChanges();

    BenchSession& session_;
    const Series& series_;
    std::unique_ptr<KnobCell> mixing_;
    LeadRow bus_, retired_, neighbour_;
    juce::TextButton changes_ { "Changes" };
    std::string reference_;          ///< tablet
    std::optional<StopPlace> place_; ///< nothing until it is worked out for the stop in hand
    int round_ = 0;                  ///< answers of an earlier one are of another stop, document or neighbour
    juce::Rectangle<int> title_, texts_;
    LatestTask task_;
};

} // namespace stopwright
