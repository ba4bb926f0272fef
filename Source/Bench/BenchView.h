// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/AudioHost.h"
#include "Bench/BenchLook.h"
#include "Bench/BenchPages.h"
#include "Bench/BenchSettings.h"
#include "Bench/DocumentActions.h"
#include "Bench/FileDrop.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/HeaderBar.h"
#include "Bench/LevelPanel.h"
#include "Bench/MessageStrip.h"
#include "Bench/PlayBar.h"
#include "Bench/PlayerActions.h"
#include "Bench/RailColumn.h"
#include "Bench/ReadingPanel.h"
#include "Bench/SheetPanel.h"
#include "Bench/TermTooltips.h"
#include "Bench/TrialMatcher.h"

#include <array>
#include <memory>

namespace stopwright
{

/// All that is in the window: the title block, the stops of an instrument and where the one in hand stands, the sheet, the
/// readings, the listening level, the keyboard, the line of notes, and the pages that are laid over them. Stops and
/// keyboard can be left out for the sake of the sheet. Threading: message thread.
class BenchView : public juce::Component,
                  public BenchPages,
                  public GlossaryOpener,
                  public juce::FileDragAndDropTarget,
                  private BenchSession::Listener,
                  private juce::Timer
{
public:
    /// The sizes that the layout is made for, at lettering scale 1.
    static constexpr int smallestWidth = 900;
    static constexpr int smallestHeight = 600;

    /// Without `audio` (in tests) the window has no set-up page.
    BenchView (BenchSession& session, BenchSettings& settings, AudioHost* audio);
    ~BenchView() override;

    /// What a run begins with: the cautions where they have not been acknowledged, then the sound device.
    void begin();

    /// Plays a MIDI file as soon as there is sound, or the bench goes on silent. Call it before `begin`.
    void playOnceSounding (const juce::File& file) { waitingFile_ = file; }

    PlayerActions& player() noexcept { return player_; }

    DocumentActions& actions() noexcept { return actions_; }

    RailPanel& rail() noexcept { return rail_; }

    RailColumn& column() noexcept { return column_; }

    SheetPanel& sheet() noexcept { return sheet_; }

    StopPlacePanel& place() noexcept { return place_; }

    TrialMatcher& matcher() noexcept { return matcher_; }

    ReadingPanel& readings() noexcept { return readings_; }

    LevelPanel& level() noexcept { return level_; }

    PlayBar& playBar() noexcept { return playBar_; }

    MessageStrip& messages() noexcept { return messages_; }

    void setNight (bool isNight);

    /// The lettering grows as far as the window has room for it.
    void setTextScale (float scale);

    /// Whether the stops, or the keyboard, take part of the window, now and in the next run.
    void showRail (bool isShown);
    void showKeyboard (bool isShown);

    /// One frame of the readings; the timer calls it, and tests do.
    void tick();

    void showPage (std::unique_ptr<SheetPage> page) override;
    void closePage() override;

    bool isPageUp() const noexcept { return page_ != nullptr; }

    /// Whether no page is up that would lose something if it went. One that would says so.
    bool mayPageGo() const { return page_ == nullptr || page_->mayGo(); }

    /// Takes files that are dropped onto the window; where a target mask goes is for its user to say.
    FileDrop& drop() noexcept { return drop_; }

    bool isInterestedInFileDrag (const juce::StringArray& files) override;
    void fileDragEnter (const juce::StringArray& files, int x, int y) override;
    void fileDragExit (const juce::StringArray& files) override;
    void filesDropped (const juce::StringArray& files, int x, int y) override;

    void showGlossary (const juce::String& term) override;

    /// In which unit levels are read from now on, and in the next run.
    void chooseLevelUnit (LevelUnit unit);

    void showChanges();
    void showBlindTest();
    void showCautions (bool isFirstRun);
    void showAudio (const juce::String& sentence);

    /// Told when the title of the window changes.
    std::function<void (const juce::String&)> onTitle;

    void paint (juce::Graphics& graphics) override;
    void paintOverChildren (juce::Graphics& graphics) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress& key) override;
    bool keyStateChanged (bool isKeyDown) override;

private:
    void sessionChanged (BenchSession::Change change) override;

    void timerCallback() override { tick(); }

    void followManners();
    void askForSecondTrial();
    void setKeyInHand (int key);
    int keyboardHeight() const;
    void joinAudio();
    void leaveAudio();
    void startAudio();
    void goOnWithAudio (const juce::String& sentence);
    void sayOfAudio (const juce::String& sentence);
    void withdrawAudioSentence();
    void updateStatus (const Telemetry& telemetry);
    void playWaitingFile();
    void showViewMenu (juce::Component& button);
    void showPlayMenu (juce::Component& button);
    juce::PopupMenu recentMenu();
    juce::PopupMenu textSizeMenu();
    juce::PopupMenu levelUnitMenu();
    void addPieces (juce::PopupMenu& menu);
    void addPanels (juce::PopupMenu& menu);
    juce::String termInQuestion() const;
    bool takeFunctionKey (const juce::KeyPress& key);
    bool takeShortcut (const juce::KeyPress& key);
    void applyLook();
    bool isRunning() const;
    void keepFocus();
    std::array<juce::Component*, 7> panels();

    BenchSession& session_;
    BenchSettings& settings_;
    AudioHost* audio_;
    BenchLook look_;
    TermTooltips tooltips_;

    KeyHands hands_;
    TypingKeys typing_;
    DocumentActions actions_;
    PlayerActions player_;
    FileDrop drop_;
    juce::String dropPromise_; ///< while files are held over the window
    HeaderBar header_;
    RailPanel rail_;
    TrialMatcher matcher_;
    SheetPanel sheet_;
    StopPlacePanel place_;
    RailColumn column_;
    ReadingPanel readings_;
    LevelPanel level_;
    PlayBar playBar_;
    MessageStrip messages_;
    std::unique_ptr<SheetPage> page_;
    juce::Component::SafePointer<SheetPage> audioPage_; ///< page_ while it is about the sound device
    std::unique_ptr<juce::FileChooser> trialChooser_;
    juce::File waitingFile_;
    std::string missedMask_; ///< why the target mask of the last run is not there, until it is told
    float textScale_ = 1.0f;
    bool isFaultTold_ = false;
    bool isAudioTold_ = false; ///< a sentence about the sound device may be up
    int lastKey_ = -1;
    float shownLoad_ = 0.0f;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (BenchView)
};

} // namespace stopwright
