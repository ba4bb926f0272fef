// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingBar.h"

#include "Bench/Lettering.h"
#include "Study/ScopeSetting.h"
#include "Units/Engineering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float gap = 6.0f;
constexpr int automaticId = 1;

juce::String stepText (double step, Quantity quantity)
{
    return juce::String::fromUTF8 (formatForReading (step, quantity, 1).c_str());
}

std::optional<double> chosenOf (const juce::ComboBox& box, const std::vector<double>& steps)
{
    const int index = box.getSelectedId() - automaticId - 1;
    if (index < 0 || index >= static_cast<int> (steps.size()))
        return {};
    return steps[static_cast<std::size_t> (index)];
}

void fillSteps (juce::ComboBox& box, const juce::String& automatic, const std::vector<double>& steps, Quantity quantity)
{
    box.addItem (automatic, automaticId);
    for (std::size_t index = 0; index < steps.size(); ++index)
        box.addItem (stepText (steps[index], quantity), static_cast<int> (index) + automaticId + 1);
}

void showChosen (juce::ComboBox& box, const std::optional<double>& chosen, const std::vector<double>& steps)
{
    const auto found = chosen ? std::ranges::find (steps, *chosen) : steps.end();
    const int id = found == steps.end() ? automaticId : static_cast<int> (found - steps.begin()) + automaticId + 1;
    box.setSelectedId (id, juce::dontSendNotification);
}

} // namespace

ReadingBar::ReadingBar (ReadingChoices& choices)
    : choices_ (choices),
      voltSteps_ (scopeSteps (ScopeRange::lowestVolts, ScopeRange::highestVolts)),
      timeSteps_ (scopeSteps (ScopeRange::lowestSeconds, ScopeRange::highestSeconds))
{
    fill();
    connect();
    for (auto* control :
         std::initializer_list<juce::Component*> { &target_, &phase_, &volts_, &time_, &level_, &stageKeys_ })
        addChildComponent (control);
    refresh();
}

void ReadingBar::fill()
{
    fillSteps (volts_, "auto volts", voltSteps_, Quantity::voltage);
    fillSteps (time_, "auto time", timeSteps_, Quantity::time);
    level_.addItem ("rms", static_cast<int> (CompassLevel::rms) + 1);
    level_.addItem ("A-weighted", static_cast<int> (CompassLevel::aWeighted) + 1);
    stageKeys_.addItem ("Ten notes", static_cast<int> (StageKeys::tenNotes) + 1);
    stageKeys_.addItem ("Every key", static_cast<int> (StageKeys::everyKey) + 1);
    volts_.setTitle ("Volts of a division");
    time_.setTitle ("Time of a division");
    level_.setTitle ("Level along the keys");
    stageKeys_.setTitle ("Keys that are held");
    volts_.setTooltip ("Volts of a division: how much of the wave's height one square of the ruling is.");
    time_.setTooltip ("Time of a division: how long one square of the ruling lasts.");
    level_.setTooltip ("Level along the keys: plain volts rms, or weighted as the ear does at low level (A).");
    stageKeys_.setTooltip (
        "Which keys are taken to be held: ten notes of a full chord on one keyboard, or every key of every keyboard, "
        "which is the worst there can be.");
    phase_.setTooltip ("Phase: shows it in a strip below the response.");
    target_.setTooltip (
        "Target: a mask of the levels that the partials should have, to hold the result against. Masks come with the "
        "program, or from a file.");
}

void ReadingBar::connect()
{
    volts_.onChange = [this]
    {
        choices_.wave.voltsPerDivision = chosenOf (volts_, voltSteps_);
        tell (Need::picture);
    };
    time_.onChange = [this]
    {
        choices_.wave.secondsPerDivision = chosenOf (time_, timeSteps_);
        tell (Need::picture);
    };
    level_.onChange = [this]
    {
        choices_.level = static_cast<CompassLevel> (level_.getSelectedId() - 1);
        tell (Need::picture);
    };
    stageKeys_.onChange = [this]
    {
        choices_.stageKeys = static_cast<StageKeys> (stageKeys_.getSelectedId() - 1);
        tell (Need::reading);
    };
    phase_.onClick = [this]
    {
        choices_.hasPhase = phase_.getToggleState();
        tell (Need::picture);
    };
    target_.onClick = [this]
    {
        if (onTarget)
            onTarget (target_);
    };
}

void ReadingBar::tell (Need need) const
{
    if (onChange)
        onChange (need);
}

void ReadingBar::refresh()
{
    target_.setVisible (choices_.kind == ReadingKind::harmonics);
    phase_.setVisible (choices_.kind == ReadingKind::response);
    volts_.setVisible (choices_.kind == ReadingKind::wave);
    time_.setVisible (choices_.kind == ReadingKind::wave);
    level_.setVisible (choices_.kind == ReadingKind::compass);
    stageKeys_.setVisible (choices_.kind == ReadingKind::stages);
    showChosen (volts_, choices_.wave.voltsPerDivision, voltSteps_);
    showChosen (time_, choices_.wave.secondsPerDivision, timeSteps_);
    level_.setSelectedId (static_cast<int> (choices_.level) + 1, juce::dontSendNotification);
    stageKeys_.setSelectedId (static_cast<int> (choices_.stageKeys) + 1, juce::dontSendNotification);
    phase_.setToggleState (choices_.hasPhase, juce::dontSendNotification);
}

int ReadingBar::layOut (int available)
{
    const int space = Lettering::px (gap);
    const int tall = Lettering::px (height);
    int x = 0;
    const auto place = [&] (juce::Component& control, int wanted)
    {
        if (! control.isVisible())
            return;
        const int left = x == 0 ? 0 : x + space;
        control.setBounds (left, 0, std::max (0, std::min (wanted, available - left)), tall);
        x = control.getRight();
    };
    const auto widthOf = [] (const juce::String& text, float beside)
    { return Lettering::widthOf (Lettering::body(), text) + Lettering::px (beside); };
    constexpr float besideButton = 22.0f;
    constexpr float besideBox = 36.0f;

    const auto words =
        choices_.mask != nullptr ? juce::String::fromUTF8 (choices_.mask->name.c_str()) : juce::String ("none");
    target_.setButtonText (
        Lettering::fitted (Lettering::body(), "Target: " + words, available - Lettering::px (besideButton)));
    place (target_, widthOf (target_.getButtonText(), besideButton));
    place (phase_, widthOf (phase_.getButtonText(), besideBox));
    place (level_, widthOf ("A-weighted", besideBox));
    place (stageKeys_, widthOf ("Every key", besideBox));
    place (volts_, widthOf ("auto volts", besideBox));
    place (time_, widthOf ("auto volts", besideBox));
    return x;
}

} // namespace stopwright
