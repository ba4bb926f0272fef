// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Sheet/Drawing.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace stopwright
{

/// A reading to be kept: its picture with a heading, its numbers, and a name for its file.
struct KeptReading
{
    Drawing drawing;
    std::string csv;
    juce::String name;
};

/// Keeps a reading in a file, or as text on the clipboard: JUCE's clipboard takes text alone, so that a picture goes
/// there as the text of an SVG. Pictures are kept as they look by day. Files are replaced as a whole or not at all.
/// Threading: message thread.
class ReadingKeeper
{
public:
    enum class Form
    {
        png, ///< two pixels to a point
        svg,
        csv
    };

    /// `reading` gives what is to be kept, nothing when there is none.
    ReadingKeeper (BenchSession& session, std::function<std::optional<KeptReading>()> reading);

    void showMenu (juce::Component& button);
    void askAndKeep (Form form);

    /// Writes it now, the form's ending added to a name that lacks it. What is refused is said; returns whether it went.
    bool keep (Form form, const juce::File& file);

    /// As text onto the clipboard; says so.
    void copy (Form form);

private:
    /// The bytes of a file. Fails: Error when there is no reading.
    std::string bytesOf (Form form) const;

    BenchSession& session_;
    std::function<std::optional<KeptReading>()> reading_;
    std::unique_ptr<juce::FileChooser> chooser_;
};

} // namespace stopwright
