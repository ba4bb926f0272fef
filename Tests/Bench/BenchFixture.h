// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchView.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace stopwright
{

/// The bench without a sound device: the demonstration organ copied to a folder of its own, a processor that the test
/// runs by hand, and, when asked for, the real window on a display. Each test gets a fresh one, with the proposed stop
/// in hand and drawn alone.
class BenchFixture : public testing::Test
{
protected:
    BenchFixture();
    ~BenchFixture() override;

    static constexpr double rateHz = 48000.0;
    static constexpr int blockFrames = 256;

    /// A file of the copied presets.
    std::filesystem::path preset (const std::string& name) const { return folder_ / name; }

    /// The index of a stop of the open instrument; the test fails when there is none.
    int stop (const std::string& tablet) const;

    /// Retires all and draws one stop.
    void drawOnly (const std::string& tablet);

    /// Opens the window with the demonstration organ in it.
    BenchView& openView (int width = 1200, int height = 800);

    /// Lets the message loop run for a while, and at least until everything that is posted already was delivered.
    static void runMessages (int milliseconds);

    /// Runs the processor for a time and returns what the first channel played.
    std::vector<double> play (double seconds);

    /// Effective value of what is played, after letting it settle.
    double settledRms (double seconds = 0.3);

    /// The cell of a number of the open card; the test fails when there is none.
    KnobCell& cell (const std::string& part, KnobKind kind = KnobKind::value);

    double value (const std::string& part, KnobKind kind = KnobKind::value) const;

    /// What a mouse does in the window, through the same way as a real one: places are in the component.
    void mouseMoveTo (juce::Component& component, juce::Point<int> place);
    void mousePress (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers = {});
    void mouseDragTo (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers = {});
    void mouseRelease (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers = {});
    void mouseDoubleClick (juce::Component& component, juce::Point<int> place);
    void mouseWheel (juce::Component& component, juce::Point<int> place, float notches);

    /// The first component of a kind within another, at any depth; nullptr when there is none.
    template <typename Kind>
    static Kind* findWithin (juce::Component& within)
    {
        for (auto* const child : within.getChildren())
        {
            if (auto* const found = dynamic_cast<Kind*> (child))
                return found;
            if (auto* const found = findWithin<Kind> (*child))
                return found;
        }
        return nullptr;
    }

    /// As if the control had the keyboard: whatever stands over it may take the key.
    static void pressEscape (juce::Component& control)
    {
        for (auto* at = &control; at != nullptr; at = at->getParentComponent())
            if (at->keyPressed (juce::KeyPress (juce::KeyPress::escapeKey)))
                break;
        runMessages (20);
    }

    /// Keeps a picture in the build folder's "pictures", to be looked at. `name` is without the ending.
    static void keepPicture (const juce::Image& image, const std::string& name);

    std::filesystem::path folder_;
    BenchProcessor processor_;
    std::unique_ptr<BenchSettings> settings_;
    BenchSession session_ { processor_ };
    std::unique_ptr<BenchView> view_;

private:
    void mouse (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers);

    juce::int64 mouseTime_ = 1000;
};

} // namespace stopwright
