// SPDX-License-Identifier: GPL-3.0-or-later
//
// What ReadingPanel opens and keeps: the choice of masks, and the picture with its heading.
#include "Bench/ReadingPanel.h"
#include "Bench/ReadingPrint.h"
#include "Bench/UsualPlaces.h"
#include "Bench/WideText.h"
#include "Sheet/ReadingPicture.h"
#include "Units/Pitch.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr double keptWidth = 640.0;
constexpr double keptHeight = 440.0;
constexpr double keptLetter = 11.0;

} // namespace

MaskShelf::Place ReadingPanel::maskPlace() const
{
    if (choices_.mask == nullptr)
        return {};
    if (maskFile_ != juce::File())
        return { {}, maskFile_ };
    return { fromUtf8 (choices_.mask->name), {} };
}

void ReadingPanel::showTargets (juce::Component& button)
{
    juce::PopupMenu menu;
    menu.addItem ("None", true, choices_.mask == nullptr, [this] { setMask (nullptr); });
    menu.addItem ("From a file...", [this] { askForMask(); });
    menu.addSeparator();
    for (const auto& mask : masks_.masks())
        menu.addItem (juce::String::fromUTF8 (mask->name.c_str()), true, choices_.mask == mask,
                      [this, mask] { setMask (mask); });
    menu.showMenuAsync (
        juce::PopupMenu::Options().withTargetComponent (button).withParentComponent (button.getTopLevelComponent()));
}

void ReadingPanel::askForMask()
{
    fileChooser_ = std::make_unique<juce::FileChooser> ("Open a target mask", folderOf (session_.document()), "*.json");
    fileChooser_->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                               [this] (const juce::FileChooser& chooser)
                               {
                                   if (const auto file = chooser.getResult(); file != juce::File())
                                       session_.attempt ([&] { openMask (file); });
                               });
}

std::optional<KeptReading> ReadingPanel::kept() const
{
    if (! isOfChosenKind())
        return {};
    ReadingFormat format { keptWidth, keptHeight, keptLetter, choices_.unit, {} };
    const std::string name = readingName (choices_.kind);
    format.heading = { session_.document().title(), name + ": " + readingPlace (result_, false) };
    auto picture = readingPicture (result_, choices_, clipped_, format);
    if (picture.spots.empty())
        return {}; // a silent key
    format.heading.push_back (picture.sentence);
    picture = readingPicture (result_, choices_, clipped_, format);

    auto fileName = session_.card().name + " " + name;
    const bool isOfKey = choices_.kind != ReadingKind::compass && choices_.kind != ReadingKind::stages;
    if (isOfKey)
        fileName.append (" ").append (keyName (std::clamp (result_.key, 0, 127)));
    return KeptReading { std::move (picture.drawing), readingCsv (result_, choices_),
                         juce::String::fromUTF8 (fileName.c_str()) };
}

} // namespace stopwright
