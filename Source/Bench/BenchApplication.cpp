// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchApplication.h"

namespace stopwright
{

namespace
{

juce::File demonstrationOrgan()
{
    const auto executable = juce::File::getSpecialLocation (juce::File::currentExecutableFile);
    auto found = findDemonstrationOrgan (executable.getFullPathName().toStdString());
    if (found.empty())
        found = findDemonstrationOrgan (STOPWRIGHT_BUILD_ROOT "/Presets");
    return found.empty() ? juce::File() : juce::File (juce::String::fromUTF8 (found.c_str()));
}

} // namespace

const juce::String BenchApplication::getApplicationVersion()
{
    return STOPWRIGHT_VERSION;
}

void BenchApplication::initialise (const juce::String&)
{
    settings_ = std::make_unique<BenchSettings>();
    processor_ = std::make_unique<BenchProcessor>();
    session_ = std::make_unique<BenchSession> (*processor_);
    audio_ = std::make_unique<AudioHost> (*processor_);
    window_ = std::make_unique<BenchWindow> (*session_, *settings_, *audio_);
    openFirst();
    window_->view().begin();
}

void BenchApplication::openFirst()
{
    auto& actions = window_->view().actions();
    const auto arguments = getCommandLineParameterArray();
    if (! arguments.isEmpty())
    {
        actions.openNow (juce::File::getCurrentWorkingDirectory().getChildFile (arguments[0].unquoted()));
        return;
    }
    if (const auto organ = demonstrationOrgan(); organ != juce::File())
        actions.openNow (organ);
    else
        session_->say (
            "The demonstration organ was not found beside the program; open a card or an instrument with \"Open\".");
}

void BenchApplication::shutdown()
{
    if (audio_ != nullptr)
        settings_->setAudioState (audio_->state().get());
    window_.reset();
    audio_.reset();
    session_.reset();
    processor_.reset();
    settings_.reset();
}

void BenchApplication::systemRequestedQuit()
{
    if (window_ != nullptr)
        window_->closeButtonPressed();
    else
        quit();
}

} // namespace stopwright
