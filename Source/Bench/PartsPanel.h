// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/KnobCell.h"
#include "Bench/RestCell.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// The parts of the card in hand, grouped by kind, the chooser of the series their knobs step through, and where a card
/// with diodes, transistors or supplies rests.
/// Threading: message thread.
class PartsPanel : public juce::Component, private BenchSession::Listener
{
public:
    explicit PartsPanel (BenchSession& session);
    ~PartsPanel() override;

    /// The width next below the one given at which the cells stand in whole columns.
    static int widthNear (int width);

    Series series() const noexcept { return series_; }

    void setSeries (Series series);

    /// Told when the user picks another series.
    std::function<void (Series)> onSeriesChosen;

    /// Where the card rests, as shown.
    const std::vector<RestCell*>& restCells() const noexcept { return restCells_; }

    /// The cell that turns `knob`, or nullptr.
    KnobCell* findCell (const CardKnob& knob) const;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    struct Group
    {
        juce::String heading;
        std::vector<std::unique_ptr<PartCell>> cells;
        juce::Rectangle<int> headingArea;
    };

    /// What scrolls: the headings are painted, the cells are children.
    class Sheet : public juce::Component
    {
    public:
        void paint (juce::Graphics& graphics) override;
        void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
        std::vector<Group> groups;
    };

    void sessionChanged (BenchSession::Change change) override;
    void rebuild();
    void addPart (const Part& part);
    void addRest();
    void refreshRest();
    Group& groupOf (const juce::String& heading);
    int layOut (int width);

    BenchSession& session_;
    Series series_ = Series::e12;
    juce::Label seriesLabel_;
    juce::ComboBox seriesBox_;
    juce::Viewport viewport_;
    Sheet sheet_;
    std::vector<RestCell*> restCells_; ///< of the sheet
};

} // namespace stopwright
