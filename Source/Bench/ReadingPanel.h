// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/ClipLatch.h"
#include "Bench/MaskShelf.h"
#include "Bench/ReadingBar.h"
#include "Bench/ReadingCanvas.h"
#include "Bench/ReadingChooser.h"
#include "Bench/ReadingKeeper.h"
#include "Bench/ReadingWorker.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// The readings of the stop in hand, one at a time: harmonics, response and wave of the key in hand, the whole compass,
/// and the stages of the instrument. Computing is done by a worker; here is only drawn. Threading: message thread.
class ReadingPanel : public juce::Component, private BenchSession::Listener, private juce::Timer
{
public:
    explicit ReadingPanel (BenchSession& session);
    ~ReadingPanel() override;

    void choose (ReadingKind kind);

    /// Shows what is kept of an earlier run: BenchSettings::readingManner says what of it counts.
    void takeManner (const ReadingChoices& kept);

    /// Told when the user chose another reading, another manner of it or another mask.
    std::function<void()> onManner;

    /// Which key is in hand.
    void setKey (int key);

    int key() const noexcept { return key_; }

    /// The node of the card that is looked at; nothing for its output.
    void setProbe (std::optional<std::string> node);

    /// How volts are told.
    void setLevelUnit (LevelUnit unit);

    /// What the harmonics are held against; null for nothing. `file` is where it was read, unless it is one of the shelf.
    void setMask (MaskShelf::Mask mask, const juce::File& file = {});

    /// The same, read from a file or found again after an earlier run. Fails: Error with a sentence; the mask stays.
    void openMask (const juce::File& file) { setMask (MaskShelf::read (file), file); }

    void takeMask (const MaskShelf::Place& place) { setMask (masks_.find (place), place.file); }

    /// Where the mask is to be found again.
    MaskShelf::Place maskPlace() const;

    /// The lamps of the stages that have clipped.
    void showClips (const ClipLatch& clips);

    const ReadingChoices& choices() const noexcept { return choices_; }

    const ReadingResult& result() const noexcept { return result_; }

    ReadingChooser& chooser() noexcept { return chooser_; }

    ReadingBar& bar() noexcept { return bar_; }

    juce::TextButton& keep() noexcept { return keep_; }

    ReadingCanvas& canvas() noexcept { return canvas_; }

    ReadingKeeper& keeper() noexcept { return keeper_; }

    /// Waits for the reading that is being computed; for tests.
    void finish() { worker_.finish(); }

    /// The numbers of the chosen spot, else what the picture as a whole has to tell.
    juce::String readingText() const;

    /// Where and of what the reading is, in as many words as `width` has room for.
    juce::String placeText (int width) const;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void timerCallback() override;
    void request (bool isOther);
    void tellManner() const;
    void take (ReadingResult result);
    bool isOfChosenKind() const;
    void drawPicture();
    void placeBar();
    void tellSpot();
    void showTargets (juce::Component& button);
    void askForMask();
    std::optional<KeptReading> kept() const;

    BenchSession& session_;
    ReadingChoices choices_;
    ReadingResult result_;
    int key_ = 60;
    std::vector<std::string> clipped_;
    MaskShelf masks_;
    juce::File maskFile_; ///< of the mask; none where it is of the shelf
    ReadingChooser chooser_;
    juce::TextButton keep_ { "Keep" };
    ReadingBar bar_ { choices_ };
    ReadingCanvas canvas_;
    ReadingKeeper keeper_;
    std::unique_ptr<juce::FileChooser> fileChooser_;
    juce::Rectangle<int> place_; ///< of what the reading is of
    juce::Rectangle<int> words_; ///< of its numbers
    ReadingWorker worker_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (ReadingPanel)
};

} // namespace stopwright
