// SPDX-License-Identifier: GPL-3.0-or-later
//
// The menu, the shortcuts and the pages of BenchView.
#include "Bench/BenchView.h"
#include "Bench/CautionsText.h"
#include "Bench/Lettering.h"
#include "Bench/UsualPlaces.h"

#include <array>
#include <utility>

namespace stopwright
{

namespace
{

constexpr std::array textPercents { 100, 115, 130, 150 };

} // namespace

void BenchView::showCautions (bool isFirstRun)
{
    const auto acknowledge = [this, isFirstRun]
    {
        settings_.acknowledgeCautions();
        closePage();
        if (isFirstRun)
            startAudio();
    };
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ isFirstRun ? "I have read this" : "Close", acknowledge });
    auto page = std::make_unique<SheetPage> ("Before you start", cautionsForReading(), std::move (choices));
    if (! isFirstRun)
        page->setClosedByEscape();
    showPage (std::move (page));
}

juce::PopupMenu BenchView::recentMenu()
{
    juce::PopupMenu menu;
    for (const auto& path : settings_.recentFiles())
    {
        const juce::File file (path);
        if (path.isNotEmpty())
            menu.addItem (file.getFileName() + "  (" + file.getParentDirectory().getFileName() + ")",
                          file.existsAsFile(), false, [this, file] { actions_.openAfterAsking (file); });
    }
    return menu;
}

juce::PopupMenu BenchView::textSizeMenu()
{
    juce::PopupMenu menu;
    for (const int percent : textPercents)
    {
        const float scale = static_cast<float> (percent) / 100.0f;
        // Where the window is too small for it, what it takes is said.
        const bool hasRoom = getWidth() >= juce::roundToInt (scale * smallestWidth)
                             && getHeight() >= juce::roundToInt (scale * smallestHeight);
        const auto wanted = juce::String (juce::roundToInt (scale * smallestWidth)) + " x "
                            + juce::String (juce::roundToInt (scale * smallestHeight));
        menu.addItem (juce::String (percent) + " %" + (hasRoom ? "" : " (in a window of " + wanted + ")"), true,
                      juce::approximatelyEqual (scale, textScale_), [this, scale] { setTextScale (scale); });
    }
    return menu;
}

void BenchView::showViewMenu (juce::Component& button)
{
    juce::PopupMenu menu;
    const auto recent = recentMenu();
    menu.addSubMenu ("Recent files", recent, recent.getNumItems() > 0);
    menu.addSubMenu ("Text size", textSizeMenu());
    menu.addSubMenu ("Unit of levels", levelUnitMenu());
    addPanels (menu);
    menu.addItem ("Dark sheet", true, look_.isNight(), [this] { setNight (! look_.isNight()); });
    menu.addSeparator();
    juce::PopupMenu::Item glossary ("Glossary");
    glossary.shortcutKeyDescription = "F1";
    glossary.action = [this] { showGlossary ({}); };
    menu.addItem (std::move (glossary));
    menu.addItem ("Cautions", [this] { showCautions (false); });
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (button).withParentComponent (this));
}

void BenchView::showPlayMenu (juce::Component& button)
{
    juce::PopupMenu menu;
    menu.addItem ("Play a MIDI file...", [this] { player_.askAndPlay(); });
    if (const auto& last = player_.lastFile(); last != juce::File() && last != demonstrationPhrase())
        menu.addItem ("Play " + last.getFileName() + " again", [this] { player_.playNow (player_.lastFile()); });
    menu.addSeparator();
    addPieces (menu);
    menu.addSeparator();
    menu.addItem ("Loop", true, player_.deck().isLoop(),
                  [this] { player_.deck().setLoop (! player_.deck().isLoop()); });
    if (audio_ != nullptr)
        menu.addItem ("MIDI inputs...", [this] { showAudio ({}); });
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (button).withParentComponent (this));
}

bool BenchView::takeShortcut (const juce::KeyPress& key)
{
    const auto modifiers = key.getModifiers();
    if (! modifiers.isCommandDown())
        return false;
    switch (juce::CharacterFunctions::toLowerCase (static_cast<juce::juce_wchar> (key.getKeyCode())))
    {
        case 'o':
            actions_.askAndOpen();
            return true;
        case 's':
            if (! session_.isOpen())
                return true;
            if (modifiers.isShiftDown())
                actions_.saveAs();
            else
                actions_.save();
            return true;
        case 'p':
            player_.playOrStop();
            return true;
        case 'z':
            session_.attempt (
                [&]
                {
                    if (modifiers.isShiftDown())
                        session_.redo();
                    else
                        session_.undo();
                });
            return true;
        case 'q':
            if (auto* application = juce::JUCEApplicationBase::getInstance())
                application->systemRequestedQuit();
            return true;
        case 'y':
            session_.attempt ([this] { session_.redo(); });
            return true;
        default:
            return false;
    }
}

bool BenchView::keyPressed (const juce::KeyPress& key)
{
    if (isPageUp())
        return false;
    if (takeShortcut (key) || takeFunctionKey (key) || typing_.takeOctaveKey (key))
        return true;
    if (key.getTextCharacter() == 'b' || key.getTextCharacter() == 'B')
    {
        sheet_.trials().flip();
        return true;
    }
    if (key == juce::KeyPress::escapeKey)
    {
        playBar_.allOff();
        session_.say ({});
        return true;
    }
    return false;
}

bool BenchView::keyStateChanged (bool)
{
    return typing_.update ((! isPageUp() || page_->isListeningOnly())
                           && ! juce::ModifierKeys::currentModifiers.isCommandDown()
                           && ! juce::ModifierKeys::currentModifiers.isAltDown());
}

} // namespace stopwright
