// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchWindow.h"
#include "Bench/CommandWords.h"
#include "Bench/LeftWorkActions.h"
#include "Bench/WorkKeeper.h"

namespace stopwright
{

/// The program stopwright-bench, with a document open and, when asked for, a MIDI file that plays. Threading: message thread.
class BenchApplication : public juce::JUCEApplication
{
public:
    explicit BenchApplication (CommandWords words);

    const juce::String getApplicationName() override { return "Stopwright bench"; }

    const juce::String getApplicationVersion() override;

    bool moreThanOneInstanceAllowed() override { return true; }

    void initialise (const juce::String& commandLine) override;
    void shutdown() override;
    void systemRequestedQuit() override;

private:
    bool openFirst();

    CommandWords words_;
    std::unique_ptr<BenchSettings> settings_;
    std::unique_ptr<BenchProcessor> processor_;
    std::unique_ptr<BenchSession> session_;
    std::unique_ptr<WorkKeeper> keeper_;
    std::unique_ptr<AudioHost> audio_;
    std::unique_ptr<BenchWindow> window_;
    std::unique_ptr<LeftWorkActions> leftWork_;
};

} // namespace stopwright
