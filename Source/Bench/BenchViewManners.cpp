// SPDX-License-Identifier: GPL-3.0-or-later
//
// What BenchView does with files that are dropped on it, with words of the trade, and the function keys; and what it keeps
// of the user's manners for the next run.
#include "Bench/BenchView.h"
#include "Bench/GlossaryPage.h"
#include "Bench/Lettering.h"
#include "Command/TradeGlossary.h"
#include "Units/Error.h"

#include <utility>

namespace stopwright
{

namespace
{

juce::PopupMenu::Item itemWithKey (const juce::String& text, const juce::String& key, std::function<void()> action)
{
    juce::PopupMenu::Item item (text);
    item.shortcutKeyDescription = key;
    item.action = std::move (action);
    return item;
}

} // namespace

/// Goes on as in the run before, and keeps what is chosen from now on.
void BenchView::followManners()
{
    readings_.setLevelUnit (settings_.levelUnit());
    readings_.takeManner (settings_.readingManner());
    try
    {
        readings_.takeMask (settings_.targetMask());
    }
    catch (const Error& error)
    {
        missedMask_ = error.what(); // and may be there again in another run
    }
    readings_.onManner = [this]
    {
        settings_.setReadingManner (readings_.choices());
        settings_.setTargetMask (readings_.maskPlace());
    };
    matcher_.setMeasure (settings_.trialMeasure());
    matcher_.onMeasure = [this] { settings_.setTrialMeasure (matcher_.measure()); };
}

bool BenchView::isInterestedInFileDrag (const juce::StringArray&)
{
    return ! isPageUp();
}

void BenchView::fileDragEnter (const juce::StringArray& files, int, int)
{
    dropPromise_ = FileDrop::promiseFor (files);
    repaint();
}

void BenchView::fileDragExit (const juce::StringArray&)
{
    dropPromise_ = {};
    repaint();
}

void BenchView::filesDropped (const juce::StringArray& files, int, int)
{
    fileDragExit (files);
    drop_.take (files);
}

void BenchView::paintOverChildren (juce::Graphics& graphics)
{
    if (dropPromise_.isEmpty())
        return;
    const auto& colours = look_.palette();
    graphics.setColour (colours.paper.withAlpha (0.7f));
    graphics.fillAll();
    graphics.setColour (colours.focus);
    graphics.drawRect (getLocalBounds().reduced (Lettering::px (6.0f)), Lettering::px (3.0f));
    const auto font = Lettering::strong();
    const auto area = getLocalBounds().withSizeKeepingCentre (
        Lettering::widthOf (font, dropPromise_) + Lettering::px (32.0f), Lettering::px (44.0f));
    graphics.setColour (colours.sheet);
    graphics.fillRect (area);
    graphics.setColour (colours.ink);
    graphics.drawRect (area, 1);
    Lettering::draw (graphics, *this, dropPromise_, font, area, juce::Justification::centred);
}

void BenchView::showGlossary (const juce::String& term)
{
    auto controls = std::make_unique<GlossaryPage> (tradeGlossary());
    auto& glossary = *controls;
    glossary.onEscape = [this]
    {
        juce::MessageManager::callAsync (
            [safe = SafePointer (this)]
            {
                if (safe != nullptr)
                    safe->closePage();
            });
    };
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Close", [this] { closePage(); } });
    auto page = std::make_unique<SheetPage> (
        "Glossary", "Type to search the words of the trade. F1 on a control opens this page at its word.",
        std::move (choices), std::move (controls), Lettering::px (GlossaryPage::height));
    page->setFirstFocus (glossary.field());
    glossary.show (term);
    showPage (std::move (page));
}

/// The control under the mouse while its tooltip is up, for that tooltip names F1; else the one that has the keyboard.
juce::String BenchView::termInQuestion() const
{
    const auto* hovered = juce::Desktop::getInstance().getMainMouseSource().getComponentUnderMouse();
    if (tooltips_.isShowing() && hovered != nullptr && isParentOf (hovered))
        if (auto term = termOf (hovered); term.isNotEmpty())
            return term;
    return termOf (getCurrentlyFocusedComponent());
}

bool BenchView::takeFunctionKey (const juce::KeyPress& key)
{
    if (key.getModifiers().isAnyModifierKeyDown())
        return false;
    const int code = key.getKeyCode();
    if (code == juce::KeyPress::F1Key)
        showGlossary (termInQuestion());
    else if (code == juce::KeyPress::F2Key)
        sheet_.beginRenaming();
    else if (code == juce::KeyPress::F5Key)
        player_.playDemonstration();
    else if (code == juce::KeyPress::F6Key)
        player_.playScale (hands_.division());
    else if (code == juce::KeyPress::F7Key)
        player_.playFullChord (hands_.division());
    else if (code == juce::KeyPress::F8Key && session_.document().instrument)
        showRail (! settings_.isRailShown());
    else if (code == juce::KeyPress::F9Key)
        showKeyboard (! settings_.isKeyboardShown());
    else
        return false;
    return true;
}

/// What can be left out of the window.
void BenchView::addPanels (juce::PopupMenu& menu)
{
    menu.addItem (itemWithKey ("Stops of the instrument", "F8", [this] { showRail (! settings_.isRailShown()); })
                      .setTicked (settings_.isRailShown())
                      .setEnabled (session_.document().instrument.has_value()));
    menu.addItem (itemWithKey ("Keyboard", "F9", [this] { showKeyboard (! settings_.isKeyboardShown()); })
                      .setTicked (settings_.isKeyboardShown()));
}

void BenchView::addPieces (juce::PopupMenu& menu)
{
    menu.addItem (itemWithKey ("Demonstration phrase", "F5", [this] { player_.playDemonstration(); }));
    menu.addItem (itemWithKey ("Scale over the compass", "F6", [this] { player_.playScale (hands_.division()); }));
    menu.addItem (itemWithKey ("Full chord", "F7", [this] { player_.playFullChord (hands_.division()); }));
}

juce::PopupMenu BenchView::levelUnitMenu()
{
    juce::PopupMenu menu;
    for (const auto unit : levelUnits)
    {
        const auto name = levelUnitName (unit);
        menu.addItem (juce::String (name.data(), name.size()), true, unit == settings_.levelUnit(),
                      [this, unit] { chooseLevelUnit (unit); });
    }
    return menu;
}

void BenchView::chooseLevelUnit (LevelUnit unit)
{
    settings_.setLevelUnit (unit);
    readings_.setLevelUnit (unit);
}

} // namespace stopwright
