// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchPages.h"
#include "Bench/BenchSession.h"
#include "Bench/BenchSettings.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Opening, saving and closing as the user meets them: file choosers, and the question before unsaved changes are lost.
/// Threading: message thread.
class DocumentActions
{
public:
    DocumentActions (BenchSession& session, BenchSettings& settings, BenchPages& pages);

    /// Opens a file at once; says a sentence when it cannot. Returns whether it did.
    bool openNow (const juce::File& file);

    void askAndOpen();
    void openAfterAsking (const juce::File& file);
    void chooseStop (int index);
    void save();
    void saveAs();

    /// Saves the card under a chosen name, with ".json" added where it has none; asks before another file is lost, and
    /// refuses the file of another tablet of the open organ.
    void saveUnder (const juce::File& chosen);

    /// Runs `next` unless the user wants to keep working on unsaved changes; `otherwise` (may be empty) runs then.
    void whenSafe (const std::function<void()>& next, const std::function<void()>& otherwise = {});

private:
    bool saveNow();
    void saveTo (const juce::File& target);

    /// The tablet whose card a file is, other than that of the card in hand; empty for none.
    std::string otherTabletOf (const juce::File& file) const;
    juce::String unsavedSentence() const;

    BenchSession& session_;
    BenchSettings& settings_;
    BenchPages& pages_;
    std::unique_ptr<juce::FileChooser> chooser_;
};

} // namespace stopwright
