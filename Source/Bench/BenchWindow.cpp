// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchWindow.h"

#include "Bench/KeyRepeat.h"

namespace stopwright
{

namespace
{

constexpr int firstWidth = 1200;
constexpr int firstHeight = 800;
constexpr int largest = 8192;

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
    view_.actions().whenSafe (
        [this]
        {
            if (onClosed)
                onClosed();
            juce::JUCEApplication::quit();
        });
}

} // namespace stopwright
