// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchWindow.h"

#include "Bench/KeyRepeat.h"
#include "Bench/WindowPlace.h"

namespace stopwright
{

namespace
{

constexpr int firstWidth = 1360;
constexpr int firstHeight = 860;
constexpr int largest = 8192;

/// What of each screen is free for windows.
std::vector<juce::Rectangle<int>> screens()
{
    std::vector<juce::Rectangle<int>> areas;
    for (const auto& display : juce::Desktop::getInstance().getDisplays().displays)
        areas.push_back (display.userArea);
    return areas;
}

} // namespace

BenchWindow::BenchWindow (BenchSession& session, BenchSettings& settings, AudioHost& audio)
    : DocumentWindow ("Stopwright bench", Palette::day().paper, DocumentWindow::allButtons),
      settings_ (settings),
      view_ (session, settings, &audio)
{
    setUsingNativeTitleBar (true);
    view_.setSize (firstWidth, firstHeight);
    view_.onTitle = [this] (const juce::String& title) { setName (title); };
    setContentNonOwned (&view_, true);
    setResizable (true, false);
    setResizeLimits (BenchView::smallestWidth, BenchView::smallestHeight, largest, largest);
    if (settings_.windowState().isEmpty() || ! restoreWindowStateFromString (settings_.windowState()))
        centreWithSize (getWidth(), getHeight());
    if (! isFullScreen())
        setBounds (placeOnScreens (getBounds(), screens(), { BenchView::smallestWidth, BenchView::smallestHeight }));
    setVisible (true);
    askForDetectableKeyRepeat();
}

BenchWindow::~BenchWindow()
{
    settings_.setWindowState (getWindowStateAsString());
    clearContentComponent();
}

void BenchWindow::closeButtonPressed()
{
    if (! view_.mayPageGo())
        return;
    view_.actions().whenSafe (
        [this]
        {
            if (onClosed)
                onClosed();
            juce::JUCEApplication::quit();
        });
}

} // namespace stopwright
