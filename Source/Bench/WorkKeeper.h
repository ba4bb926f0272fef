// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"

#include <juce_events/juce_events.h>

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// Keeps unsaved work in a file of its own while the program runs, so that a crash or a power cut loses no more than the
/// last second; the file goes when nothing is unsaved and when the program ends in good order. Each running program has a
/// place of its own, held by a lock that the system releases when a program dies.
/// Threading: message thread.
class WorkKeeper : private BenchSession::Listener, private juce::Timer
{
public:
    static constexpr int intervalMs = 1000;
    static constexpr int placeCount = 16;

    /// Keeps nothing yet: what an earlier run left is looked for first.
    WorkKeeper (BenchSession& session, const juce::File& folder);
    ~WorkKeeper() override;

    /// What a run left that did not end in good order.
    struct Left
    {
        juce::File file;
        juce::Time time;
        juce::String text;
    };

    /// The next of them, oldest place first; empty when there is none left. It stays on disk until `forget`, so that a
    /// crash meanwhile loses nothing, and is held against other running programs.
    std::optional<Left> takeLeft();

    /// It is wanted no more, or is part of what this run keeps.
    static void forget (const Left& left) { left.file.deleteFile(); }

    /// Puts aside what cannot be read, under another name in the same folder, which is returned.
    static juce::File putAside (const Left& left);

    /// Begins to keep this run's work. Says a sentence, once, when it cannot be written.
    void begin();

    /// Writes what has changed since the last time, on a thread of its own; the timer does.
    void keep();

    /// Nothing of what is unsaved now is wanted any more: the user closes the program and was asked. Without it what is
    /// unsaved when this goes stays on disk, for the next run.
    void endInGoodOrder();

    /// Waits until all is written.
    void finish();

    /// This run's file.
    juce::File file() const;

private:
    void sessionChanged (BenchSession::Change change) override;

    void timerCallback() override { keep(); }

    juce::File fileOf (int place) const;
    static juce::String lockNameOf (const juce::File& file);

    void write (std::string text);
    void complainOnce();

    BenchSession& session_;
    juce::File folder_;
    std::vector<std::unique_ptr<juce::InterProcessLock>> locks_; ///< of what was left, and of this run's place
    int place_ = -1;
    int nextPlace_ = 0;
    bool isDue_ = false;
    bool hasComplained_ = false;
    std::mutex mutex_;
    std::string failure_; ///< guarded by the mutex
    juce::ThreadPool writer_ { 1 };
};

} // namespace stopwright
