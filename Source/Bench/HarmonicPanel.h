// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/HarmonicAxis.h"
#include "Bench/HarmonicWorker.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Harmonic bars of the key in hand: the source as wide hatched bars behind, the result as narrow solid bars in front,
/// partials that the source lacks as open circles on the base line. The numbers of a partial are told under the pointer
/// or, with the keyboard, by the left and right arrow keys. Threading: message thread.
class HarmonicPanel : public juce::Component, public juce::SettableTooltipClient, private BenchSession::Listener
{
public:
    explicit HarmonicPanel (BenchSession& session);
    ~HarmonicPanel() override;

    /// Which key the bars are of.
    void setKey (int key);

    int key() const noexcept { return key_; }

    const HarmonicPicture& picture() const noexcept { return picture_; }

    /// Waits for the picture that is being computed; for tests.
    void finish() { worker_.finish(); }

    /// The line that tells the numbers of the chosen partial, else the strongest.
    juce::String readingText() const;

    void choosePartial (int index);

    void paint (juce::Graphics& graphics) override;
    void resized() override;
    void mouseMove (const juce::MouseEvent& event) override;
    void mouseExit (const juce::MouseEvent& event) override;
    bool keyPressed (const juce::KeyPress& key) override;
    void focusGained (FocusChangeType cause) override;
    void focusLost (FocusChangeType cause) override;

private:
    void sessionChanged (BenchSession::Change change) override;
    void request();
    void take (const HarmonicPicture& picture);
    void updateAxis();
    int nearestBar (float x) const;

    void paintHeader (juce::Graphics& graphics);
    void paintLegend (juce::Graphics& graphics, juce::Rectangle<int> area);
    void paintGrid (juce::Graphics& graphics);
    void paintBars (juce::Graphics& graphics);
    void paintPartialNumbers (juce::Graphics& graphics);
    void paintChosen (juce::Graphics& graphics);

    BenchSession& session_;
    int key_ = 60;
    HarmonicPicture picture_;
    HarmonicAxis axis_;
    int chosen_ = -1;
    HarmonicWorker worker_;
};

} // namespace stopwright
