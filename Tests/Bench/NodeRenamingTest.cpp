// SPDX-License-Identifier: GPL-3.0-or-later
//
// A node is renamed where it is drawn: by a double-click on its wire, and by the keyboard.
#include "Bench/SheetFixture.h"
#include "Organ/CardLead.h"

#include <algorithm>

namespace stopwright
{

namespace
{

class NodeRenamingTest : public SheetFixture
{
protected:
    bool hasNode (const std::string& node) const { return ! leadsAt (session_.card(), node).empty(); }

    juce::TextEditor* editor() { return editorIn (schematic()); }

    /// Types into the open line and ends it with Return.
    void type (const juce::String& name)
    {
        ASSERT_NE (editor(), nullptr);
        editor()->setText (name);
        press (juce::KeyPress::returnKey);
    }

    void doubleClick (const std::string& node)
    {
        mouseDoubleClick (schematic(), onWire (node));
        runMessages (20);
    }
};

} // namespace

TEST_F (NodeRenamingTest, ADoubleClickOnAWireRenamesItsNode)
{
    openView();
    const auto before = text();
    doubleClick ("t");
    ASSERT_NE (editor(), nullptr);
    EXPECT_EQ (editor()->getText(), "t");
    EXPECT_EQ (editor()->getHighlightedText(), "t");
    EXPECT_EQ (editor()->getTitle(), "Name of node \"t\"");
    EXPECT_TRUE (editor()->getBounds().contains (onWire ("t")));
    type ("  treble ");
    EXPECT_EQ (editor(), nullptr);
    EXPECT_TRUE (hasNode ("treble"));
    EXPECT_FALSE (hasNode ("t"));
    EXPECT_EQ (session_.history().undoName(), "node t renamed treble");
    session_.undo();
    EXPECT_EQ (text(), before);
    EXPECT_FALSE (session_.document().isUnsaved());
}

TEST_F (NodeRenamingTest, TheProbeStaysOnItsNodeAlsoWhenItIsUndone)
{
    openView();
    doubleClick ("t");
    type ("treble");
    EXPECT_EQ (schematic().probe(), "treble");
    EXPECT_EQ (sheet().probeBox().getText(), "node treble");
    std::string told = "-";
    sheet().onProbe = [&] (const std::string& node) { told = node; };
    session_.undo();
    EXPECT_EQ (schematic().probe(), "t");
    EXPECT_EQ (told, "t");
    EXPECT_EQ (sheet().probeBox().getText(), "node t");
    session_.redo();
    EXPECT_EQ (schematic().probe(), "treble");
    EXPECT_EQ (told, "treble");
}

TEST_F (NodeRenamingTest, TheReadingGoesOnAtTheRenamedNode)
{
    openView();
    doubleClick ("t");
    type ("treble");
    view_->readings().finish();
    EXPECT_EQ (view_->readings().result().place, "node treble");
    EXPECT_EQ (view_->readings().result().refusal, "");
    session_.undo();
    view_->readings().finish();
    EXPECT_EQ (view_->readings().result().place, "node t");
    EXPECT_EQ (view_->readings().result().refusal, "");
}

TEST_F (NodeRenamingTest, TheOtherTrialKeepsItsNameAndTheProbeFindsIt)
{
    openView();
    session_.beginSecondTrial();
    doubleClick ("t");
    type ("treble");
    session_.flipTrial();
    EXPECT_TRUE (hasNode ("t"));
    EXPECT_EQ (schematic().probe(), "t");
    session_.flipTrial();
    EXPECT_EQ (schematic().probe(), "treble");
}

TEST_F (NodeRenamingTest, TheProbeIsNotMisledByANameThatAnotherNodeHasInTheOtherTrial)
{
    openView();
    session_.beginSecondTrial();
    doubleClick ("t");
    type ("treble");
    doubleClick ("out");
    type ("t");
    ASSERT_EQ (schematic().probe(), "t");
    session_.flipTrial();
    EXPECT_EQ (schematic().probe(), "out");
    session_.flipTrial();
    EXPECT_EQ (schematic().probe(), "t");
}

TEST_F (NodeRenamingTest, AnotherDocumentTakesTheProbeToItsOutput)
{
    openView();
    schematic().setProbe ("t");
    session_.open (preset ("Oboe8.json"));
    EXPECT_EQ (schematic().probe(), "");
    EXPECT_EQ (sheet().probeBox().getText(), "card's output");
}

TEST_F (NodeRenamingTest, TheSoundGoesOn)
{
    openView();
    processor_.engine().key (60, true);
    const double before = settledRms();
    doubleClick ("t");
    type ("treble");
    EXPECT_EQ (sheet().faultText(), "");
    EXPECT_NEAR (settledRms() / before, 1.0, 0.01);
}

TEST_F (NodeRenamingTest, ARefusedNameIsToldAndCanBeTypedAgain)
{
    openView();
    const auto before = text();
    doubleClick ("t");
    const auto expectRefusal = [&] (const juce::String& name, const juce::String& sentence)
    {
        type (name);
        ASSERT_NE (editor(), nullptr) << name;
        EXPECT_EQ (view_->messages().sentence(), sentence);
        EXPECT_EQ (text(), before);
        EXPECT_EQ (schematic().probe(), "t");
    };
    expectRefusal ("out", "There is a node \"out\" on this card already; choose another name, or join the two.");
    expectRefusal ("  ", "A name is empty; give it one.");
    expectRefusal ("0", "The name \"0\" is that of circuit common; choose another, or join the node to common.");
    type ("treble");
    EXPECT_EQ (editor(), nullptr);
    EXPECT_EQ (view_->messages().sentence(), "");
    EXPECT_TRUE (hasNode ("treble"));
}

TEST_F (NodeRenamingTest, CommonKeepsItsName)
{
    openView();
    doubleClick ("0");
    EXPECT_EQ (editor(), nullptr);
    EXPECT_EQ (view_->messages().sentence(), "Circuit common is called \"0\" on every card; leave it so.");
}

TEST_F (NodeRenamingTest, EscapeAndAClickElsewhereChangeNothing)
{
    openView();
    const auto before = text();
    doubleClick ("t");
    ASSERT_NE (editor(), nullptr);
    editor()->setText ("treble");
    press (juce::KeyPress::escapeKey);
    EXPECT_EQ (editor(), nullptr);
    doubleClick ("t");
    ASSERT_NE (editor(), nullptr);
    editor()->setText ("treble");
    mousePress (schematic(), onWire ("out"));
    mouseRelease (schematic(), onWire ("out"));
    runMessages (20);
    EXPECT_EQ (editor(), nullptr);
    EXPECT_EQ (text(), before);
    EXPECT_FALSE (session_.history().canUndo());
}

TEST_F (NodeRenamingTest, F2RenamesTheNodeWithTheProbeElseTheOutputsAndGivesTheKeyboardBack)
{
    openView();
    schematic().select ({});
    auto& keyboard = view_->playBar().keyboard();
    keyboard.grabKeyboardFocus();
    schematic().setProbe ("t");
    press (juce::KeyPress::F2Key);
    type ("treble");
    EXPECT_EQ (schematic().probe(), "treble");
    EXPECT_EQ (juce::Component::getCurrentlyFocusedComponent(), &keyboard);
    EXPECT_FALSE (schematic().selection());

    schematic().setProbe ({});
    press (juce::KeyPress::F2Key);
    type ("end");
    EXPECT_EQ (session_.card().output, "end");
    EXPECT_EQ (schematic().probe(), "");
    EXPECT_EQ (sheet().faultText(), "");
}

TEST_F (NodeRenamingTest, F2InTheBoxOfTheProbeRenamesTheNodeAlsoWithAPartInHand)
{
    openView();
    schematic().takeHold ({ false, "R5" });
    schematic().setProbe ("t");
    sheet().probeBox().grabKeyboardFocus();
    press (juce::KeyPress::F2Key);
    type ("treble");
    EXPECT_TRUE (hasNode ("treble"));
    EXPECT_EQ (juce::Component::getCurrentlyFocusedComponent(), &sheet().probeBox());
    EXPECT_EQ (schematic().selection()->name, "R5");

    view_->playBar().keyboard().grabKeyboardFocus();
    press (juce::KeyPress::F2Key); // elsewhere it is the part's
    EXPECT_EQ (editor(), nullptr);
    ASSERT_NE (editorIn (sheet().desk()), nullptr);
    EXPECT_EQ (editorIn (sheet().desk())->getText(), "R5");
}

TEST_F (NodeRenamingTest, ThePartInHandStaysInHand)
{
    openView();
    schematic().takeHold ({ false, "R5" });
    doubleClick ("t");
    type ("treble");
    EXPECT_EQ (schematic().selection()->name, "R5");
    EXPECT_EQ (juce::Component::getCurrentlyFocusedComponent(), schematic().findCell ({ false, "R5" }));
}

TEST_F (NodeRenamingTest, TheLineIsInSightOnASheetThatIsScrolled)
{
    settings_->setTextScale (1.5f);
    openView (1350, 900);
    auto* const viewport = schematic().findParentComponentOfClass<juce::Viewport>();
    ASSERT_NE (viewport, nullptr);
    ASSERT_GT (schematic().getWidth(), viewport->getViewWidth()); // else there is nothing to scroll
    schematic().select ({});
    for (const auto& node : nodesOf (session_.card()))
    {
        if (node == "0")
            continue;
        viewport->setViewPosition (node == "out" ? 0 : schematic().getWidth(), 0);
        schematic().setProbe (node);
        press (juce::KeyPress::F2Key);
        ASSERT_NE (editor(), nullptr) << node;
        EXPECT_TRUE (viewport->getViewArea().contains (editor()->getBounds())) << node;
        press (juce::KeyPress::escapeKey);
    }
}

TEST_F (NodeRenamingTest, AClickBesideEveryPartLeavesNoneToTheArrowKeys)
{
    openView();
    schematic().takeHold ({ false, "R5" });
    mousePress (schematic(), { 1, 1 });
    mouseRelease (schematic(), { 1, 1 });
    EXPECT_FALSE (schematic().selection());
    EXPECT_FALSE (schematic().hasKeyboardFocus (true));
    view_->tick();
    EXPECT_EQ (juce::Component::getCurrentlyFocusedComponent(), &view_->playBar().keyboard());
}

TEST_F (NodeRenamingTest, AWireTellsWhatAClickDoes)
{
    openView();
    EXPECT_EQ (schematic().getTooltip(), "");
    mouseMoveTo (schematic(), onWire ("t"));
    EXPECT_EQ (schematic().getTooltip(), "Node \"t\": a click puts the probe on it, a double-click renames it.");
    mouseMoveTo (schematic(), onWire ("0"));
    EXPECT_EQ (schematic().getTooltip(), "Circuit common: every voltage is measured from it.");
    mouseMoveTo (schematic(), { 1, 1 });
    EXPECT_EQ (schematic().getTooltip(), "");
}

} // namespace stopwright
