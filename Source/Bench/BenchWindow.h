// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchView.h"

namespace stopwright
{

/// The one window of the program; it remembers where it was. Threading: message thread.
class BenchWindow : public juce::DocumentWindow
{
public:
    BenchWindow (BenchSession& session, BenchSettings& settings, AudioHost& audio);
    ~BenchWindow() override;

    BenchView& view() noexcept { return view_; }

    /// Closes the program, after a question when something is unsaved.
    /// Told when the user closes the window and what is unsaved has been dealt with.
    std::function<void()> onClosed;

    void closeButtonPressed() override;

private:
    BenchSettings& settings_;
    BenchView view_;

    JUCE_DECLARE_NON_COPYABLE_WITH_LEAK_DETECTOR (BenchWindow)
};

} // namespace stopwright
