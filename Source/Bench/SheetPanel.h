// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/PartDesk.h"
#include "Bench/SchematicView.h"
#include "Bench/TrialBar.h"

namespace stopwright
{

/// The sheet: the schematic of the card in hand with its trials, what can be added to it, the series its rings step
/// through, where the probe is, what is wrong with it, and the part in hand. Threading: message thread.
class SheetPanel : public juce::Component, private BenchSession::Listener, private juce::Timer
{
public:
    SheetPanel (BenchSession& session, TrialMatcher& matcher, TrialBar::Actions trialActions);
    ~SheetPanel() override;

    Series series() const noexcept { return series_; }

    /// The same to be read whenever a knob moves.
    const Series& seriesInForce() const noexcept { return series_; }

    void setSeries (Series series);

    /// Told when the user picks another series.
    std::function<void (Series)> onSeriesChosen;

    /// Told when the probe was put on another node; empty for the card's output.
    std::function<void (const std::string&)> onProbe;

    SchematicView& schematic() noexcept { return view_; }

    PartDesk& desk() noexcept { return desk_; }

    TrialBar& trials() noexcept { return trials_; }

    juce::TextButton& addButton() noexcept { return add_; }

    juce::ComboBox& probeBox() noexcept { return probe_; }

    /// The cell that turns `knob`, or nullptr: on the schematic, else of the part in hand.
    KnobCell* findCell (const CardKnob& knob) const;

    /// Opens a line for another name of the part in hand; without one, and from the probe's box, of the node in hand.
    void beginRenaming();

    /// Adds a part between the node with the probe (else the output) and common, and takes it in hand.
    void addPart (const PartValue& value);

    /// Adds a tap from a keyed bus to the node with the probe, else to a new one.
    void addTapFrom (const std::string& keyedBus);

    /// What is wrong with the card, as written over the sheet; empty when nothing is.
    juce::String faultText() const;

    /// Whether the stop in hand is silent because its tablet is retired; never of a card alone.
    bool isRetired() const;

    void paint (juce::Graphics& graphics) override;
    void resized() override;
    void mouseUp (const juce::MouseEvent& event) override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void showAddMenu();
    void fillProbe();
    void tellTitle();
    void paintTitle (juce::Graphics& graphics);
    int faultHeight (int width) const;
    void layOutSheet();
    void followSelection();
    void showInHand();
    void timerCallback() override;

    BenchSession& session_;
    Series series_ = Series::e12;
    juce::ComboBox seriesBox_;
    juce::ComboBox probe_;
    juce::TextButton add_ { "Add" };
    TrialBar trials_;
    juce::Viewport viewport_;
    SchematicView view_;
    PartDesk desk_;
    std::vector<std::string> probeNodes_;
    bool isHandWaitedFor_ = false; ///< the mouse took a part, and the desk waits until it lets go
    juce::Rectangle<int> titleArea_, seriesLabel_, probeLabel_, faultArea_, sheetArea_;
};

} // namespace stopwright
