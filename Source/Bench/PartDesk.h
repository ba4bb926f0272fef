// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/KnobCell.h"
#include "Bench/LeadRow.h"
#include "Bench/RestCell.h"
#include "Bench/SchematicView.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// What there is to know and to change of the part or tap in hand beside its ring: every number of it, its name, and which
/// node each lead goes to; where it is narrow, numbers or leads. With none in hand, where a card with diodes, transistors or
/// supplies rests.
/// Threading: message thread.
class PartDesk : public juce::Component, public juce::SettableTooltipClient, private BenchSession::Listener
{
public:
    /// How tall the desk must be at a width to have room for any part; without one in hand less will do.
    static int heightFor (int width, bool isInUse);

    PartDesk (BenchSession& session, const Series& series);
    ~PartDesk() override;

    using Selection = SchematicView::Selection;

    void show (const std::optional<Selection>& selection);

    /// Changes between numbers and leads where there is no width for both.
    juce::TextButton& turnButton() noexcept { return turn_; }

    /// Whether there is more on it than a hint, so that it wants its whole height.
    bool isInUse() const noexcept { return selection_.has_value() || ! rest_.empty(); }

    /// Told after the selection was renamed, by its new name, or was not after all: the keyboard goes to it.
    std::function<void (const Selection&)> onRenamed;
    std::function<void()> onRemove;

    /// The keyboard goes to its first control.
    void takeFocus();

    void beginRenaming();

    /// Takes a new name; says a sentence when it cannot be had. Returns whether it was taken.
    bool takeName (const juce::String& name);

    /// The cell of a number of the selection, or nullptr.
    KnobCell* findCell (const CardKnob& knob) const;

    /// The rows of the leads, in the order of the part's kind; for a tap, what it is taken from and then its node.
    const std::vector<std::unique_ptr<LeadRow>>& leadRows() const noexcept { return leads_; }

    /// Where the card rests, as shown.
    const std::vector<std::unique_ptr<RestCell>>& restCells() const noexcept { return rest_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void rebuild();
    void addNumbers();
    void addLeads();
    void addTapRows (const Tap& tap);
    void addRest();
    void teach();
    bool isNarrow() const;

    bool hasLeadsOnly() const { return isNarrow() && isTurned_; }

    void turnOver();
    void layOutRest (juce::Rectangle<int> area);
    void layOutWide (juce::Rectangle<int> area);
    void layOutNarrow (juce::Rectangle<int> area);
    void takeFocusAt (std::size_t lead);
    void solder (std::size_t lead, const std::string& node);
    void takeFrom (const std::string& keyedBus);
    std::vector<std::string> nodeNames() const;

    BenchSession& session_;
    const Series& series_;
    std::optional<Selection> selection_;
    std::vector<std::unique_ptr<KnobCell>> numbers_;
    std::vector<std::unique_ptr<LeadRow>> leads_;
    std::vector<std::unique_ptr<RestCell>> rest_;
    juce::TextButton turn_ { "Leads" };
    bool isTurned_ = false; ///< shows leads where it is narrow
    juce::TextButton rename_ { "Rename" };
    juce::TextButton remove_ { "Remove" };
    ValueEditor editor_ { session_ };
    juce::Rectangle<int> nameArea_;
};

} // namespace stopwright
