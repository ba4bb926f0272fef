// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/TargetMask.h"

#include <juce_core/juce_core.h>

#include <memory>
#include <vector>

namespace stopwright
{

/// The target masks that come with the program, by name. What cannot be read is left out. Threading: message thread.
class MaskShelf
{
public:
    using Mask = std::shared_ptr<const TargetMask>;

    /// Where a mask is to be found again in another run: on the shelf by its name, or in a file; neither for none.
    struct Place
    {
        juce::String name;
        juce::File file;
    };

    /// Reads the folder when it is first asked for.
    explicit MaskShelf (juce::File folder) : folder_ (std::move (folder)) {}

    const std::vector<Mask>& masks();

    /// The mask of that place, null for none. Fails: Error with a sentence that names it.
    Mask find (const Place& place);

    /// Fails: Error with a sentence.
    static Mask read (const juce::File& file);

private:
    juce::File folder_;
    bool isRead_ = false;
    std::vector<Mask> masks_;
};

} // namespace stopwright
