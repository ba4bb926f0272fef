// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/LeadHandle.h"
#include "Bench/PartCell.h"
#include "Bench/ValueEditor.h"
#include "Sheet/SchematicDrawing.h"
#include "Sheet/SchematicLayout.h"
#include "Units/PreferredValues.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace stopwright
{

/// The schematic of the card in hand as the surface it is turned on: every symbol has its ring, the part that has the
/// keyboard shows the ends of its leads, a click on a wire puts the probe on its node, and a double-click renames the node.
/// Faults stand where they are. In a small window symbols shrink, and letters only as far as there is no room for them.
/// Keys: Tab from part to part, Ctrl with an arrow to the neighbour, Delete removes, F2 renames, F3 goes to the part desk.
/// Threading: message thread.
class SchematicView : public juce::Component,
                      public juce::TooltipClient,
                      private BenchSession::Listener,
                      private juce::Timer
{
public:
    /// A tap or a part of the card.
    struct Selection
    {
        bool isTap = false;
        std::string name;

        bool operator== (const Selection&) const = default;
    };

    SchematicView (BenchSession& session, const Series& series);
    ~SchematicView() override;

    /// Lays the sheet out for a room of this size, larger where it does not fit, and fills at least what is seen of it.
    void layOut (juce::Point<int> room, juce::Point<int> seen);

    /// Scrolls the part in hand with its leads into sight, unless a name is being typed elsewhere.
    void showSelection();

    const SchematicLayout& layout() const noexcept { return layout_; }

    const std::optional<Selection>& selection() const noexcept { return selection_; }

    /// Marks a part and shows the ends of its leads; nothing for an empty one.
    void select (const std::optional<Selection>& selection);

    /// Takes it by the keyboard as well.
    void takeHold (const Selection& selection);

    /// The node the readings are of; none is the card's output. It stays on its node when that is renamed.
    const std::string& probe() const noexcept { return probe_; }

    /// The node with the probe, else that of the card's output.
    std::string nodeInHand() const;

    /// Opens a line for the name of the node in hand, where its own name stands.
    void beginNodeRenaming();

    /// Takes a new name for a node; says a sentence when it cannot be had. Returns whether it was taken.
    bool takeNodeName (const std::string& node, const juce::String& typed);

    void setProbe (const std::string& node);

    std::function<void()> onSelect;
    std::function<void()> onProbe;
    std::function<void()> onRename; ///< of the selection
    std::function<void()> onDesk;   ///< the keyboard goes to all that there is of the selection
    std::function<void()> onResize; ///< the card needs another size than before

    /// The ring that turns `knob`, or nullptr: the value of a part or the level of a tap.
    PartCell* findCell (const Selection& selection) const;

    /// The handle of a lead of the selection, or nullptr.
    LeadHandle* findHandle (std::size_t lead) const;

    /// A place of the drawing in this component.
    juce::Point<float> toView (DrawingPoint place) const noexcept;

    void removeSelection();

    /// What a click does on the wire under the pointer; empty beside the wires.
    juce::String getTooltip() override;

    void paint (juce::Graphics& graphics) override;
    void paintOverChildren (juce::Graphics& graphics) override;
    void mouseDown (const juce::MouseEvent& event) override;
    void mouseDoubleClick (const juce::MouseEvent& event) override;
    void mouseMove (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
    bool keyPressed (const juce::KeyPress& key) override;

private:
    static constexpr double wireTolerance = 7.0; ///< points

    void sessionChanged (BenchSession::Change change) override;
    void timerCallback() override;
    void letter();
    void rebuild();
    void layOutCard();
    double letterFactor() const;
    void redraw();
    void addCells();
    void dropCells();
    void placeCells();
    void addHandles();
    std::unique_ptr<PartCell> makeCell (const SheetItem& item) const;
    const SheetItem* itemOf (const Selection& selection) const;
    Selection selectionOf (const SheetItem& item) const;
    bool walk (SheetDirection direction);
    std::string nodeAt (juce::Point<float> place) const;
    void hover (const std::string& node);
    void beginNodeRenaming (const std::string& node, juce::Point<int> place);
    std::function<void()> wayBack();
    void dropLead (const LeadHandle& handle, juce::Point<float> place);
    void paintFaults (juce::Graphics& graphics) const;
    void paintProbe (juce::Graphics& graphics) const;
    DrawingPoint fromView (juce::Point<float> place) const noexcept;
    juce::Rectangle<int> boxInView (const DrawingBox& box) const noexcept;
    std::optional<juce::Rectangle<float>> placeOfFault (const Finding& finding) const;

    BenchSession& session_;
    const Series& series_;
    SchematicLayout plain_;  ///< with its letters at the size of the symbols
    SchematicLayout layout_; ///< as it is shown
    Drawing drawing_;
    float scale_ = 1.0f;
    juce::Point<float> origin_;
    std::vector<std::unique_ptr<PartCell>> cells_;
    std::vector<Selection> cellNames_; ///< of each cell
    std::vector<std::unique_ptr<LeadHandle>> handles_;
    std::optional<Selection> selection_;
    std::string probe_;
    std::string hoveredNode_; ///< under the pointer; empty for none
    ValueEditor nameEditor_ { session_ };
};

} // namespace stopwright
