// SPDX-License-Identifier: GPL-3.0-or-later
//
// The glossary in the window: how it is reached, searched and followed.
#include "Bench/GlossaryPage.h"
#include "Bench/BenchFixture.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/PartTerms.h"
#include "Command/TradeGlossary.h"
#include "Organ/CardDocument.h"
#include "Organ/CardEdit.h"

#include <utility>

namespace stopwright
{

namespace
{

class GlossaryPageTest : public BenchFixture
{
protected:
    template <typename Wanted>
    static Wanted* find (juce::Component& parent)
    {
        for (auto* child : parent.getChildren())
        {
            if (auto* wanted = dynamic_cast<Wanted*> (child))
                return wanted;
            if (auto* wanted = find<Wanted> (*child))
                return wanted;
        }
        return nullptr;
    }

    GlossaryPage* page() { return find<GlossaryPage> (*view_); }

    std::string shown() { return page() != nullptr && page()->shown() != nullptr ? page()->shown()->name : "nothing"; }

    void press (int code)
    {
        view_->getPeer()->handleKeyPress (juce::KeyPress (code));
        runMessages (20);
    }

    static void expectLeadsTo (juce::Component& component, const juce::String& term)
    {
        TermTooltips tooltips;
        EXPECT_NE (tradeGlossary().find (term.toStdString()), nullptr) << component.getTitle() << ": " << term;
        const auto tip = tooltips.getTipFor (component);
        EXPECT_TRUE (tip.endsWith ("\nF1: " + term)) << component.getTitle() << ": " << tip;
        EXPECT_GE (tip.length(), term.length() + 20) << tip;
    }

    void type (const juce::String& text)
    {
        page()->field().setText (text, true);
        runMessages (20);
    }
};

} // namespace

TEST_F (GlossaryPageTest, F1OpensItAtTheWordOfTheControl)
{
    openView();
    cell ("L1", KnobKind::windingOhms).grabKeyboardFocus();
    press (juce::KeyPress::F1Key);
    EXPECT_EQ (shown(), "winding");
    press (juce::KeyPress::escapeKey);
    EXPECT_FALSE (view_->isPageUp());

    view_->playBar().swell().grabKeyboardFocus();
    press (juce::KeyPress::F1Key);
    EXPECT_EQ (shown(), "swell shoe");
    view_->closePage();
    view_->showGlossary ("no such word");
    EXPECT_EQ (shown(), tradeGlossary().terms().front().name);
}

TEST_F (GlossaryPageTest, AClickOnAMarkedWordOpensIt)
{
    openView();
    auto* mark = find<TermMark> (view_->level());
    ASSERT_NE (mark, nullptr);
    mousePress (*mark, { 10, mark->getHeight() / 2 });
    mouseRelease (*mark, { 10, mark->getHeight() / 2 });
    EXPECT_EQ (shown(), "listening level");
}

TEST_F (GlossaryPageTest, TypingSearchesAndTheArrowsChoose)
{
    openView();
    view_->showGlossary ("tap");
    EXPECT_EQ (shown(), "tap");
    EXPECT_EQ (juce::Component::getCurrentlyFocusedComponent(), &page()->field());
    type ("bus");
    EXPECT_EQ (shown(), "bus");
    const int found = page()->foundCount();
    EXPECT_GE (found, 4);
    press (juce::KeyPress::downKey);
    EXPECT_EQ (shown(), "keyed bus");
    press (juce::KeyPress::upKey);
    press (juce::KeyPress::upKey);
    EXPECT_EQ (shown(), "bus");
    type ("zither");
    EXPECT_EQ (shown(), "nothing");
    type ("");
    EXPECT_EQ (page()->foundCount(), static_cast<int> (tradeGlossary().terms().size()));
    EXPECT_NE (shown(), "nothing");
}

TEST_F (GlossaryPageTest, ReferencesLeadOnAndBack)
{
    openView();
    view_->showGlossary ("tap");
    EXPECT_FALSE (page()->back().isEnabled());
    ASSERT_FALSE (page()->references().empty());
    EXPECT_EQ (page()->references().front()->getButtonText(), "keyed bus");
    page()->references().front()->onClick();
    runMessages (20);
    EXPECT_EQ (shown(), "keyed bus");
    page()->references().back()->onClick();
    EXPECT_EQ (shown(), "tap");
    page()->back().onClick();
    EXPECT_EQ (shown(), "keyed bus");
    page()->back().onClick();
    EXPECT_EQ (shown(), "tap");
    EXPECT_FALSE (page()->back().isEnabled());
}

TEST_F (GlossaryPageTest, EveryTermHasRoomAtEverySize)
{
    settings_->setTextScale (1.5f);
    for (const auto& [width, height] : { std::pair { 900, 600 }, std::pair { 1200, 800 }, std::pair { 1680, 1050 } })
    {
        openView (width, height);
        view_->showGlossary ("tap");
        for (const auto& term : tradeGlossary().terms())
        {
            page()->show (term.name);
            EXPECT_EQ (shown(), term.name);
            EXPECT_TRUE (page()->doesTextFit()) << term.name << " at " << width;
            for (const auto& reference : page()->references())
                EXPECT_TRUE (page()->getLocalBounds().contains (reference->getBounds())) << term.name;
        }
        view_.reset();
    }
}

TEST_F (GlossaryPageTest, ATooltipEndsWithTheWayToTheGlossary)
{
    openView();
    TermTooltips tooltips;
    EXPECT_TRUE (tooltips.getTipFor (cell ("R5")).endsWith ("\nF1: resistor"));
    juce::TextButton plain ("Plain");
    plain.setTooltip ("A button.");
    EXPECT_EQ (tooltips.getTipFor (plain), "A button.");
    setTerm (plain, "tap");
    EXPECT_EQ (tooltips.getTipFor (plain), "A button.\nF1: tap");
}

TEST_F (GlossaryPageTest, EveryCellOfTheSheetAndItsDeskHasATooltipThatLeadsToATerm)
{
    openView();
    auto& schematic = view_->sheet().schematic();
    auto& desk = view_->sheet().desk();
    // A copy: choosing a part opens the desk, and the sheet is laid out anew.
    const auto items = schematic.layout().items;
    for (const auto& item : items)
    {
        if (item.kind == SheetItemKind::output)
            continue;
        const bool isTap = item.kind == SheetItemKind::tap;
        auto* const cell = schematic.findCell ({ isTap, item.name });
        ASSERT_NE (cell, nullptr) << item.name;
        const auto term = isTap ? juce::String ("tap") : partTerm (findPart (session_.card(), item.name)->value);
        expectLeadsTo (*cell, term);
        schematic.select (SchematicView::Selection { isTap, item.name });
        expectLeadsTo (desk, term); // the line with its name
        const auto& rows = desk.leadRows();
        ASSERT_EQ (rows.size(), 2U) << item.name;
        expectLeadsTo (*rows.front(), isTap ? "keyed bus" : "node");
        expectLeadsTo (rows.front()->box(), isTap ? "keyed bus" : "node");
        expectLeadsTo (*rows.back(), "node");
        for (auto* const child : desk.getChildren())
            if (child->isVisible())
                expectLeadsTo (*child, termOf (child));
        for (std::size_t lead = 0; lead < 2; ++lead)
            if (auto* const handle = schematic.findHandle (lead))
                expectLeadsTo (*handle, "node");
    }
    schematic.select ({});
    EXPECT_EQ (termOf (&desk), "");
}

TEST_F (GlossaryPageTest, EveryKindOfPartAndWhereItRestsLeadsToATerm)
{
    openView();
    session_.open (std::filesystem::path (STOPWRIGHT_ROOT) / "Tests/Organ/Documents/good/card-devices.json");
    auto& schematic = view_->sheet().schematic();
    ASSERT_FALSE (view_->sheet().desk().restCells().empty());
    for (const auto& cell : view_->sheet().desk().restCells())
    {
        const auto* const part = findPart (session_.card(), cell->reading().name);
        expectLeadsTo (*cell, part != nullptr ? partTerm (part->value) : juce::String ("node"));
    }
    session_.editCard ("more parts",
                       [] (Card& card)
                       {
                           card = addPart (std::move (card), Switch {}, { "x", "0" }, "S9");
                           card = addPart (std::move (card), OpAmp {}, { "x", "y", "y" }, "U9");
                           card = addPart (std::move (card), Potentiometer { 10e3 }, { "x", "y", "0" }, "VR9");
                       });
    for (const auto& part : session_.card().parts)
    {
        auto* const cell = schematic.findCell ({ false, part.name });
        ASSERT_NE (cell, nullptr) << part.name;
        expectLeadsTo (*cell, partTerm (part.value));
    }
}

TEST_F (GlossaryPageTest, F1AnswersOnTheSheet)
{
    openView();
    auto& sheet = view_->sheet();
    const auto expectF1 = [this] (juce::Component& control, const std::string& term)
    {
        control.grabKeyboardFocus();
        press (juce::KeyPress::F1Key);
        EXPECT_EQ (shown(), term);
        view_->closePage();
    };
    expectF1 (*sheet.schematic().findCell ({ false, "C1" }), "capacitor");
    expectF1 (sheet.desk().leadRows().front()->box(), "node");
    expectF1 (*sheet.schematic().findCell ({ true, "Square 8" }), "tap");
    expectF1 (sheet.desk().leadRows().front()->box(), "keyed bus");
    expectF1 (sheet.probeBox(), "probe");
    expectF1 (sheet.addButton(), "card");
}

TEST_F (GlossaryPageTest, AWireLeadsToItsWord)
{
    openView();
    auto& schematic = view_->sheet().schematic();
    const auto moveTo = [&] (const char* node)
    { mouseMoveTo (schematic, schematic.toView (schematic.layout().findNode (node)->probe).roundToInt()); };
    moveTo ("t");
    expectLeadsTo (schematic, "node");
    moveTo ("0");
    expectLeadsTo (schematic, "common");
    mouseMoveTo (schematic, { 1, 1 });
    EXPECT_EQ (termOf (&schematic), "");
}

TEST_F (GlossaryPageTest, EveryNumberOfEveryPresetHasATerm)
{
    int knobs = 0;
    for (const auto* name : { "Krummhorn8.json", "Oboe8.json", "VoxHumana8.json", "String8.json" })
    {
        const auto card = readCard (preset (name));
        for (const auto& part : card.parts)
            for (const auto kind : { KnobKind::value, KnobKind::windingOhms, KnobKind::selfFarads, KnobKind::leakOhms,
                                     KnobKind::gainBandwidthHz, KnobKind::seriesOhms, KnobKind::position })
            {
                const auto term = knobTerm (card, { CardKnob::Place::part, part.name, kind });
                EXPECT_NE (tradeGlossary().find (term.toStdString()), nullptr) << part.name << ": " << term;
                ++knobs;
            }
        EXPECT_EQ (knobTerm (card, { CardKnob::Place::tapLevel, card.taps.front().name, KnobKind::value }), "tap");
        EXPECT_EQ (knobTerm (card, { CardKnob::Place::part, "no part", KnobKind::value }), "");
    }
    EXPECT_GE (knobs, 100);
    for (const PartValue& value :
         { PartValue (Switch {}), PartValue (OpAmp {}), PartValue (Diode {}), PartValue (Npn {}), PartValue (Pnp {}),
           PartValue (Supply {}), PartValue (Potentiometer {}) })
        EXPECT_NE (tradeGlossary().find (partTerm (value).toStdString()), nullptr) << partTerm (value);
}

} // namespace stopwright
