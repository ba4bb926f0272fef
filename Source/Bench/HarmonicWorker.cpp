// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/HarmonicWorker.h"

#include <utility>

namespace stopwright
{

HarmonicWorker::HarmonicWorker (std::function<void (const HarmonicPicture&)> onPicture)
    : juce::Thread ("harmonics"),
      onPicture_ (std::move (onPicture))
{
    startThread (juce::Thread::Priority::low);
}

HarmonicWorker::~HarmonicWorker()
{
    cancelPendingUpdate();
    stopThread (-1);
}

void HarmonicWorker::request (const Card& card, const KeySource& keySource, int key)
{
    {
        const std::scoped_lock lock (mutex_);
        request_ = Request { card, keySource, key };
        idle_.reset();
    }
    notify();
}

void HarmonicWorker::run()
{
    while (! threadShouldExit())
    {
        std::optional<Request> request;
        {
            const std::scoped_lock lock (mutex_);
            request = std::exchange (request_, std::nullopt);
            if (! request)
                idle_.signal();
        }
        if (! request)
        {
            wait (-1);
            continue;
        }

        auto picture = harmonicPictureOf (request->card, request->keySource, request->key);
        {
            const std::scoped_lock lock (mutex_);
            picture_ = std::move (picture);
        }
        triggerAsyncUpdate();
    }
}

void HarmonicWorker::handleAsyncUpdate()
{
    std::optional<HarmonicPicture> picture;
    {
        const std::scoped_lock lock (mutex_);
        picture = std::exchange (picture_, std::nullopt);
    }
    if (picture)
        onPicture_ (*picture);
}

void HarmonicWorker::finish()
{
    idle_.wait();
    handleUpdateNowIfNeeded();
}

} // namespace stopwright
