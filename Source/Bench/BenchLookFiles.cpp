// SPDX-License-Identifier: GPL-3.0-or-later
//
// How BenchLook draws the choice of a file, where the desktop brings none of its own: in the window's lettering and tones.
#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

namespace stopwright
{

namespace
{

constexpr float rowHeight = 26.0f;
constexpr float iconWidth = 32.0f;
constexpr float sizeWidth = 90.0f;
constexpr float timeWidth = 150.0f;
constexpr float gap = 10.0f;

} // namespace

juce::AttributedString BenchLook::createFileChooserHeaderText (const juce::String& title,
                                                               const juce::String& instructions)
{
    juce::AttributedString text;
    text.setJustification (juce::Justification::centred);
    text.append (title + "\n\n", Lettering::title(), palette().ink);
    text.append (instructions, Lettering::body(), palette().ink);
    return text;
}

void BenchLook::layoutFileBrowserComponent (juce::FileBrowserComponent& browser,
                                            juce::DirectoryContentsDisplayComponent* list,
                                            juce::FilePreviewComponent* preview,
                                            juce::ComboBox* path,
                                            juce::TextEditor* name,
                                            juce::Button* upwards)
{
    const int line = Lettering::px (rowHeight);
    const int space = Lettering::px (gap);
    auto area = browser.getLocalBounds().reduced (Lettering::px (20.0f), Lettering::px (4.0f));
    auto top = area.removeFromTop (line);
    upwards->setBounds (top.removeFromRight (Lettering::px (44.0f)));
    path->setBounds (top.withTrimmedRight (space));
    // The word before the name is the framework's, fifty pixels wide at its left.
    name->setBounds (area.removeFromBottom (line).withTrimmedLeft (Lettering::px (40.0f)));
    name->applyFontToAllText (Lettering::body());
    if (preview != nullptr)
        preview->setBounds (area.removeFromRight (area.getWidth() / 3));
    if (auto* const rows = dynamic_cast<juce::FileListComponent*> (list))
    {
        rows->setRowHeight (line);
        rows->setBounds (area.reduced (0, space));
    }
}

void BenchLook::drawFileBrowserRow (juce::Graphics& graphics,
                                    int width,
                                    int height,
                                    const juce::File&,
                                    const juce::String& name,
                                    juce::Image* icon,
                                    const juce::String& size,
                                    const juce::String& time,
                                    bool isFolder,
                                    bool isSelected,
                                    int,
                                    juce::DirectoryContentsDisplayComponent& list)
{
    const auto* const owner = dynamic_cast<juce::Component*> (&list);
    if (owner == nullptr)
        return;
    juce::Rectangle<int> area (width, height);
    if (isSelected)
        graphics.fillAll (findColour (juce::DirectoryContentsDisplayComponent::highlightColourId));

    const auto iconArea = area.removeFromLeft (Lettering::px (iconWidth)).reduced (Lettering::px (4.0f)).toFloat();
    if (icon != nullptr && icon->isValid())
        graphics.drawImage (*icon, iconArea, juce::RectanglePlacement::onlyReduceInSize);
    else if (const auto* const picture = isFolder ? getDefaultFolderImage() : getDefaultDocumentFileImage())
        picture->drawWithin (graphics, iconArea, juce::RectanglePlacement::centred, 1.0f);

    area.removeFromRight (Lettering::px (gap));
    graphics.setColour (palette().ink);
    // A narrow list has room for the names alone.
    if (! isFolder && area.getWidth() > Lettering::px (2.0f * (sizeWidth + timeWidth)))
    {
        const auto right = juce::Justification::centredRight;
        Lettering::draw (graphics, *owner, time, Lettering::small(), area.removeFromRight (Lettering::px (timeWidth)),
                         right);
        Lettering::draw (graphics, *owner, size, Lettering::small(), area.removeFromRight (Lettering::px (sizeWidth)),
                         right);
        area.removeFromRight (Lettering::px (gap));
    }
    Lettering::draw (graphics, *owner, Lettering::fitted (Lettering::body(), name, area.getWidth()), Lettering::body(),
                     area);
}

} // namespace stopwright
