// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/DocumentActions.h"

#include "Bench/UsualPlaces.h"
#include "Units/QuotedText.h"

#include <utility>

namespace stopwright
{

namespace
{

std::filesystem::path pathOf (const juce::File& file)
{
    return { file.getFullPathName().toStdString() };
}

} // namespace

DocumentActions::DocumentActions (BenchSession& session, BenchSettings& settings, BenchPages& pages)
    : session_ (session),
      settings_ (settings),
      pages_ (pages)
{}

bool DocumentActions::openNow (const juce::File& file)
{
    const bool isOpened = session_.attempt ([&] { session_.open (pathOf (file)); });
    if (isOpened)
    {
        settings_.addRecentFile (file);
        session_.say (session_.openingNote());
    }
    return isOpened;
}

void DocumentActions::askAndOpen()
{
    whenSafe (
        [this]
        {
            chooser_ = std::make_unique<juce::FileChooser> ("Open a card or an instrument",
                                                            folderOf (session_.document()), "*.json");
            chooser_->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                                   [this] (const juce::FileChooser& chooser)
                                   {
                                       if (const auto file = chooser.getResult(); file != juce::File())
                                           openNow (file);
                                   });
        });
}

void DocumentActions::openAfterAsking (const juce::File& file)
{
    whenSafe ([this, file] { openNow (file); });
}

void DocumentActions::chooseStop (int index)
{
    if (index == session_.document().stopIndex)
        return;
    // The chooser already shows the other stop: it must go back when that cannot be taken.
    if (! session_.attempt ([this, index] { session_.chooseStop (index); }))
        session_.attempt ([this] { session_.showAgain(); });
}

bool DocumentActions::saveNow()
{
    return session_.attempt ([this] { session_.save(); });
}

void DocumentActions::save()
{
    if (session_.document().cardFile().empty())
        saveAs();
    else
        saveNow();
}

void DocumentActions::saveAs()
{
    const auto file = session_.document().cardFile();
    const auto name = file.empty() ? juce::String ("Card.json") : juce::String::fromUTF8 (file.filename().c_str());
    chooser_ = std::make_unique<juce::FileChooser> ("Save the card as",
                                                    folderOf (session_.document()).getChildFile (name), "*.json");
    chooser_->launchAsync (juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles,
                           [this] (const juce::FileChooser& chooser)
                           {
                               if (chooser.getResult() != juce::File())
                                   saveUnder (chooser.getResult());
                           });
}

void DocumentActions::saveUnder (const juce::File& chosen)
{
    const auto target =
        chosen.hasFileExtension ("json") ? chosen : chosen.getSiblingFile (chosen.getFileName() + ".json");
    if (const auto tablet = otherTabletOf (target); ! tablet.empty())
    {
        session_.say (quotedText (target.getFileName().toStdString()) + " is the card of " + tablet
                      + " in this organ, which would be lost; choose another name.");
        return;
    }
    if (! target.exists() || target == fileFrom (session_.document().cardFile()))
    {
        saveTo (target);
        return;
    }
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Replace it", [this, target]
                         {
                             pages_.closePage();
                             saveTo (target);
                         } });
    choices.push_back ({ "Keep it", [this] { pages_.closePage(); } });
    auto page = std::make_unique<SheetPage> ("This file is there already",
                                             "\"" + target.getFileName()
                                                 + "\" holds something already, which is lost if it is replaced.",
                                             std::move (choices));
    page->setFirstFocusOnLast();
    pages_.showPage (std::move (page));
}

std::string DocumentActions::otherTabletOf (const juce::File& file) const
{
    const auto& document = session_.document();
    if (! document.instrument)
        return {};
    for (const auto& stop : document.instrument->stops)
        if (! stop.cardFile.empty() && stop.cardFile != document.cardName()
            && file == fileFrom (document.fileOfCard (stop.cardFile)))
            return stop.name;
    return {};
}

void DocumentActions::saveTo (const juce::File& target)
{
    if (session_.attempt ([&] { session_.saveAs (pathOf (target)); }))
        settings_.addRecentFile (target);
}

void DocumentActions::whenSafe (const std::function<void()>& next, const std::function<void()>& otherwise)
{
    if (! session_.isOpen() || ! session_.document().isUnsaved())
    {
        next();
        return;
    }

    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Save", [this, next]
                         {
                             pages_.closePage();
                             if (saveNow())
                                 next();
                         } });
    choices.push_back ({ "Do not save", [this, next]
                         {
                             pages_.closePage();
                             next();
                         } });
    choices.push_back ({ "Keep working", [this, otherwise]
                         {
                             pages_.closePage();
                             if (otherwise)
                                 otherwise();
                         } });
    pages_.showPage (std::make_unique<SheetPage> ("Unsaved changes", unsavedSentence(), std::move (choices)));
}

juce::String DocumentActions::unsavedSentence() const
{
    const auto names = session_.document().unsavedNames();
    juce::StringArray quoted;
    for (const auto& name : names)
        quoted.add ("\"" + juce::String::fromUTF8 (name.c_str()) + "\"");
    return quoted.joinIntoString (", ")
           + (names.size() == 1 ? " was changed and is not saved. What was changed is lost if you go on without saving."
                                : " were changed and are not saved. What was changed is lost if you go on without "
                                  "saving.");
}

} // namespace stopwright
