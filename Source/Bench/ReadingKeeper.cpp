// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingKeeper.h"

#include "Bench/DrawingPainter.h"
#include "Bench/UsualPlaces.h"
#include "Organ/DocumentFile.h"
#include "Sheet/SvgWriter.h"
#include "Units/Error.h"

#include <array>
#include <utility>

namespace stopwright
{

namespace
{

constexpr double pixelsPerPoint = 2.0;
constexpr double margin = 12.0;

const char* endingOf (ReadingKeeper::Form form)
{
    constexpr std::array endings { "png", "svg", "csv" };
    return endings[static_cast<std::size_t> (form)];
}

KeptReading required (std::optional<KeptReading> reading)
{
    if (! reading)
        throw Error ("There is no reading to keep at present; choose a card and a key that sound.");
    return std::move (*reading);
}

std::string pngOf (const Drawing& drawing)
{
    const auto image = DrawingPainter::imageOf (drawing, Palette::day(), pixelsPerPoint, margin);
    juce::MemoryOutputStream stream;
    if (! juce::PNGImageFormat().writeImageToStream (image, stream))
        throw Error ("The picture could not be made into a PNG; keep it as SVG instead.");
    return { static_cast<const char*> (stream.getData()), stream.getDataSize() };
}

} // namespace

ReadingKeeper::ReadingKeeper (BenchSession& session, std::function<std::optional<KeptReading>()> reading)
    : session_ (session),
      reading_ (std::move (reading))
{}

void ReadingKeeper::showMenu (juce::Component& button)
{
    juce::PopupMenu menu;
    menu.addItem ("Save picture as PNG...", [this] { askAndKeep (Form::png); });
    menu.addItem ("Save picture as SVG...", [this] { askAndKeep (Form::svg); });
    menu.addItem ("Save numbers as CSV...", [this] { askAndKeep (Form::csv); });
    menu.addSeparator();
    menu.addItem ("Copy picture as SVG text", [this] { copy (Form::svg); });
    menu.addItem ("Copy numbers as CSV text", [this] { copy (Form::csv); });
    menu.showMenuAsync (
        juce::PopupMenu::Options().withTargetComponent (button).withParentComponent (button.getTopLevelComponent()));
}

void ReadingKeeper::askAndKeep (Form form)
{
    session_.attempt (
        [&]
        {
            const auto name = required (reading_()).name + "." + endingOf (form);
            chooser_ = std::make_unique<juce::FileChooser> (
                form == Form::csv ? "Save the numbers as" : "Save the picture as",
                folderOf (session_.document()).getChildFile (juce::File::createLegalFileName (name)),
                juce::String ("*.") + endingOf (form));
            chooser_->launchAsync (juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles
                                       | juce::FileBrowserComponent::warnAboutOverwriting,
                                   [this, form] (const juce::FileChooser& chooser)
                                   {
                                       if (chooser.getResult() != juce::File())
                                           keep (form, chooser.getResult());
                                   });
        });
}

std::string ReadingKeeper::bytesOf (Form form) const
{
    const auto reading = required (reading_());
    if (form == Form::csv)
        return reading.csv;
    return form == Form::svg ? svgText (reading.drawing) : pngOf (reading.drawing);
}

bool ReadingKeeper::keep (Form form, const juce::File& file)
{
    return session_.attempt (
        [&]
        {
            auto target = file;
            if (! file.hasFileExtension (endingOf (form)))
            {
                // The chooser has asked about the name as it was typed, not about this one.
                target = file.getSiblingFile (file.getFileName() + "." + endingOf (form));
                if (target.exists())
                    throw Error (target.getFileName().toStdString()
                                 + " is there already; to replace it, choose it by its whole name.");
            }
            writeDocumentFile (bytesOf (form), target.getFullPathName().toStdString());
            session_.tell ("Kept in " + target.getFullPathName().toStdString() + ".");
        });
}

void ReadingKeeper::copy (Form form)
{
    session_.attempt (
        [&]
        {
            juce::SystemClipboard::copyTextToClipboard (juce::String::fromUTF8 (bytesOf (form).c_str()));
            session_.tell (form == Form::csv ? "The numbers are on the clipboard, as CSV text."
                                             : "The picture is on the clipboard, as the text of an SVG.");
        });
}

} // namespace stopwright
