// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// The line at the foot of the window: what was refused and why, in a sentence, until it is put away; else how the
/// bench is playing. Threading: message thread.
class MessageStrip : public juce::Component, private BenchSession::Listener
{
public:
    explicit MessageStrip (BenchSession& session);
    ~MessageStrip() override;

    /// Shown when there is no sentence: device, rate, load.
    void setStatus (const juce::String& status);

    const juce::String& sentence() const noexcept { return sentence_; }

    /// How tall the strip must be to show its sentence at this width.
    int heightFor (int width) const;

    /// Told when the height that is needed may have changed.
    std::function<void()> onHeightChange;

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    void sessionSays (const std::string& sentence) override { show (sentence, true); }

    void sessionTells (const std::string& sentence) override { show (sentence, false); }

    void show (const std::string& sentence, bool isWarning);
    void paintSign (juce::Graphics& graphics, juce::Rectangle<float> area) const;
    juce::TextLayout layoutFor (int width) const;
    int textWidth (int width) const;

    BenchSession& session_;
    juce::String sentence_;
    bool isWarning_ = true; ///< else it asks nothing of the user
    juce::String status_;
    juce::TextButton dismiss_ { "Put away" };
};

} // namespace stopwright
