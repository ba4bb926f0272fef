// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchWindow.h"

namespace stopwright
{

/// The program stopwright-bench: `stopwright-bench [DOCUMENT]`. Threading: message thread.
class BenchApplication : public juce::JUCEApplication
{
public:
    const juce::String getApplicationName() override { return "Stopwright bench"; }

    const juce::String getApplicationVersion() override;

    bool moreThanOneInstanceAllowed() override { return true; }

    void initialise (const juce::String& commandLine) override;
    void shutdown() override;
    void systemRequestedQuit() override;

private:
    void openFirst();

    std::unique_ptr<BenchSettings> settings_;
    std::unique_ptr<BenchProcessor> processor_;
    std::unique_ptr<BenchSession> session_;
    std::unique_ptr<AudioHost> audio_;
    std::unique_ptr<BenchWindow> window_;
};

} // namespace stopwright
