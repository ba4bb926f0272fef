// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/DocumentActions.h"
#include "Bench/PlayerActions.h"

#include <functional>

namespace stopwright
{

/// What happens to files that are dropped onto the window: a card or an instrument is opened, after the question about
/// unsaved changes; a target mask is handed on; a MIDI file plays; what it cannot use is said in a sentence. What a file is,
/// is read in it and not taken from its name. Threading: message thread.
class FileDrop
{
public:
    FileDrop (BenchSession& session, DocumentActions& actions, PlayerActions& player);

    void take (const juce::StringArray& paths);

    /// What will be done with files that are held over the window, to be read before they are let go.
    static juce::String promiseFor (const juce::StringArray& paths);

    /// Takes a target mask; empty where the window has no place for one.
    std::function<void (const juce::File&)> onMask;

private:
    void takeFile (const juce::File& file);
    void takeDocument (const juce::File& file);

    BenchSession& session_;
    DocumentActions& actions_;
    PlayerActions& player_;
};

} // namespace stopwright
