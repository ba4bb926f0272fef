// SPDX-License-Identifier: GPL-3.0-or-later
//
// What BenchView has to do with the sound device.
#include "Bench/AudioPage.h"
#include "Bench/BenchView.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

void BenchView::joinAudio()
{
    if (audio_ == nullptr)
        return;
    audio_->setUnheardMidi (settings_.unheardMidi());
    const auto tell = [this] (const juce::String& sentence)
    {
        isAudioTold_ = true;
        session_.say (sentence.toStdString());
    };
    audio_->onDeviceLost = tell;
    audio_->onSlowServer = tell;
}

void BenchView::leaveAudio()
{
    if (audio_ == nullptr)
        return;
    audio_->onDeviceLost = {};
    audio_->onSlowServer = {};
}

void BenchView::startAudio()
{
    if (isShowing())
        playBar_.takeFocus();
    if (audio_ == nullptr)
    {
        playWaitingFile();
        return;
    }
    audio_->start (settings_.audioState(),
                   [safe = juce::Component::SafePointer<BenchView> (this)] (const juce::String& sentence)
                   {
                       if (safe != nullptr)
                           safe->goOnWithAudio (sentence);
                   });
}

void BenchView::sayOfAudio (const juce::String& sentence)
{
    isAudioTold_ = true;
    session_.say (sentence.toStdString());
}

void BenchView::withdrawAudioSentence()
{
    if (std::exchange (isAudioTold_, false))
        session_.say ({});
}

/// What the sound device is asked for has been found, or `sentence` tells why not.
void BenchView::goOnWithAudio (const juce::String& sentence)
{
    withdrawAudioSentence();
    if (sentence.isNotEmpty())
    {
        // A blind test goes on, and the sentence stands there after it.
        if (isPageUp() && page_->isListeningOnly())
            sayOfAudio (sentence);
        else
            showAudio (sentence);
        return;
    }
    if (audioPage_ != nullptr)
        showAudio ({}); // it told that there was none
    playWaitingFile();
}

void BenchView::playWaitingFile()
{
    if (const auto file = std::exchange (waitingFile_, juce::File()); file != juce::File())
        player_.playNow (file);
}

void BenchView::showAudio (const juce::String& sentence)
{
    if (audio_ == nullptr)
        return;
    auto controls = std::make_unique<AudioPage> (*audio_);
    controls->onChosen = [this] (const juce::String& error)
    {
        if (error.isNotEmpty())
        {
            sayOfAudio (error);
            return;
        }
        withdrawAudioSentence();
        settings_.setAudioState (audio_->state().get());
    };
    controls->onMidiChosen = [this] (const juce::StringArray& unheard) { settings_.setUnheardMidi (unheard); };

    std::vector<SheetPage::Choice> choices;
    if (audio_->hasDevice())
        choices.push_back ({ "Done", [this] { closePage(); } });
    else
    {
        choices.push_back ({ "Try again", [this]
                             {
                                 closePage();
                                 startAudio();
                             } });
        choices.push_back ({ "Go on silent", [this]
                             {
                                 audio_->goSilent();
                                 closePage();
                                 playWaitingFile();
                             } });
    }
    const auto text = sentence.isNotEmpty() ? sentence
                      : audio_->hasDevice() ? "Playing on " + audio_->statusText() + "."
                                            : audio_->whyNoDevice();
    auto page = std::make_unique<SheetPage> (audio_->hasDevice() ? "Audio" : "No sound device", text,
                                             std::move (choices), std::move (controls), AudioPage::heightWanted());
    if (audio_->hasDevice())
        page->setClosedByEscape();
    audioPage_ = page.get();
    showPage (std::move (page));
}

void BenchView::updateStatus (const Telemetry& telemetry)
{
    // The worst block of late, falling slowly, so that the number can be read.
    shownLoad_ = std::max (static_cast<float> (telemetry.loadFraction), shownLoad_ * 0.99f);
    const auto device = audio_ != nullptr ? audio_->statusText() : juce::String ("No sound device.");
    messages_.setStatus (device + "   load " + juce::String (juce::roundToInt (100.0f * shownLoad_)) + " %");
}

} // namespace stopwright
