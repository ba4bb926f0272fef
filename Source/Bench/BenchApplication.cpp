// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchApplication.h"

#include "Bench/UsualPlaces.h"

#include <utility>

namespace stopwright
{

namespace
{

juce::File fileOf (const std::string& word)
{
    return juce::File::getCurrentWorkingDirectory().getChildFile (juce::String::fromUTF8 (word.c_str()));
}

} // namespace

BenchApplication::BenchApplication (CommandWords words) : words_ (std::move (words)) {}

const juce::String BenchApplication::getApplicationVersion()
{
    return STOPWRIGHT_VERSION;
}

void BenchApplication::initialise (const juce::String&)
{
    settings_ = std::make_unique<BenchSettings>();
    processor_ = std::make_unique<BenchProcessor>();
    session_ = std::make_unique<BenchSession> (*processor_);
    keeper_ = std::make_unique<WorkKeeper> (*session_, BenchSettings::programFolder());
    audio_ = std::make_unique<AudioHost> (*processor_);
    window_ = std::make_unique<BenchWindow> (*session_, *settings_, *audio_);
    if (openFirst() && ! words_.stops.empty())
        session_->attempt ([this] { session_->drawOnly (words_.stops); });
    window_->onClosed = [this] { keeper_->endInGoodOrder(); };
    auto& view = window_->view();
    if (! words_.midiFile.empty())
        view.playOnceSounding (fileOf (words_.midiFile));
    leftWork_ = std::make_unique<LeftWorkActions> (*session_, *keeper_, view);
    leftWork_->askAndGoOn ([&view] { view.begin(); });
}

bool BenchApplication::openFirst()
{
    auto& actions = window_->view().actions();
    if (! words_.document.empty())
        return actions.openNow (fileOf (words_.document));
    if (const auto organ = demonstrationOrgan(); organ != juce::File())
        return actions.openNow (organ);
    session_->say (
        "The demonstration organ was not found beside the program; open a card or an instrument with \"Open\".");
    return false;
}

void BenchApplication::shutdown()
{
    if (audio_ != nullptr)
        settings_->setAudioState (audio_->state().get());
    leftWork_.reset();
    window_.reset();
    keeper_.reset();
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
