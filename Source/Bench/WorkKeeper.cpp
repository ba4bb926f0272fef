// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/WorkKeeper.h"

#include "Bench/WorkText.h"
#include "Organ/DocumentFile.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

WorkKeeper::WorkKeeper (BenchSession& session, const juce::File& folder) : session_ (session), folder_ (folder)
{
    session_.addListener (*this);
}

WorkKeeper::~WorkKeeper()
{
    stopTimer();
    session_.removeListener (*this);
    keep();
    finish();
}

void WorkKeeper::endInGoodOrder()
{
    stopTimer();
    session_.removeListener (*this);
    isDue_ = false;
    if (place_ >= 0)
        write ({});
    finish();
}

juce::File WorkKeeper::fileOf (int place) const
{
    return folder_.getChildFile ("kept-work-" + juce::String (place + 1) + ".json");
}

juce::File WorkKeeper::file() const
{
    return fileOf (std::max (0, place_));
}

juce::String WorkKeeper::lockNameOf (const juce::File& file)
{
    return "stopwright-" + juce::String::toHexString (file.getFullPathName().hashCode64());
}

std::optional<WorkKeeper::Left> WorkKeeper::takeLeft()
{
    while (nextPlace_ < placeCount)
    {
        const auto file = fileOf (nextPlace_++);
        if (! file.existsAsFile())
            continue;
        auto lock = std::make_unique<juce::InterProcessLock> (lockNameOf (file));
        if (! lock->enter (0))
            continue; // another program is at work on it
        locks_.push_back (std::move (lock));
        return Left { file, file.getLastModificationTime(), file.loadFileAsString() };
    }
    return {};
}

juce::File WorkKeeper::putAside (const Left& left)
{
    auto aside = left.file.getSiblingFile ("unreadable-work.json").getNonexistentSibling();
    left.file.moveFileTo (aside);
    return aside;
}

void WorkKeeper::begin()
{
    folder_.createDirectory();
    for (int place = 0; place < placeCount && place_ < 0; ++place)
    {
        if (fileOf (place).existsAsFile())
            continue;
        auto lock = std::make_unique<juce::InterProcessLock> (lockNameOf (fileOf (place)));
        if (! lock->enter (0))
            continue;
        locks_.push_back (std::move (lock));
        place_ = place;
    }
    startTimer (intervalMs);
}

void WorkKeeper::sessionChanged (BenchSession::Change change)
{
    if (change != BenchSession::Change::registration)
        isDue_ = true;
}

void WorkKeeper::complainOnce()
{
    std::string failure;
    {
        const std::scoped_lock lock (mutex_);
        failure.swap (failure_);
    }
    if (! failure.empty() && ! std::exchange (hasComplained_, true))
        session_.say ("Unsaved work cannot be kept against a crash: " + failure);
}

void WorkKeeper::keep()
{
    complainOnce();
    if (! isDue_ || place_ < 0)
        return;
    isDue_ = false;
    const bool hasWork = session_.isOpen() && session_.document().isUnsaved();
    write (hasWork ? keptWorkText (session_.document()) : std::string());
}

/// An empty text takes the file away.
void WorkKeeper::write (std::string text)
{
    writer_.addJob (
        [this, file = file(), text = std::move (text)]
        {
            try
            {
                if (text.empty())
                    file.deleteFile();
                else
                    writeDocumentFile (text, file.getFullPathName().toStdString());
            }
            catch (const std::exception& error)
            {
                const std::scoped_lock lock (mutex_);
                failure_ = error.what();
            }
        });
}

void WorkKeeper::finish()
{
    while (writer_.getNumJobs() > 0)
        juce::Thread::sleep (1);
    complainOnce();
}

} // namespace stopwright
