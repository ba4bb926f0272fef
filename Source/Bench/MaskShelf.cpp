// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/MaskShelf.h"

#include "Organ/MaskDocument.h"
#include "Units/Error.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

MaskShelf::Mask MaskShelf::read (const juce::File& file)
{
    return std::make_shared<const TargetMask> (readMask (file.getFullPathName().toStdString()));
}

MaskShelf::Mask MaskShelf::find (const Place& place)
{
    const auto gone = [] (const juce::String& what)
    {
        return Error (
            ("The target mask of the last run, " + what + ", is not there any more; choose another under \"Target\".")
                .toStdString());
    };
    if (place.file != juce::File())
    {
        if (! place.file.existsAsFile())
            throw gone (place.file.getFullPathName());
        return read (place.file);
    }
    if (place.name.isEmpty())
        return nullptr;
    const auto found =
        std::ranges::find (masks(), place.name.toStdString(), [] (const Mask& mask) { return mask->name; });
    if (found == masks().end())
        throw gone ("\"" + place.name + "\"");
    return *found;
}

const std::vector<MaskShelf::Mask>& MaskShelf::masks()
{
    if (std::exchange (isRead_, true))
        return masks_;
    if (! folder_.isDirectory())
        return masks_;
    for (const auto& file : folder_.findChildFiles (juce::File::findFiles, false, "*.json"))
    {
        try
        {
            masks_.push_back (read (file));
        }
        catch (const Error&)
        {
            continue; // one bad file must not hide the others; opening it by hand tells why
        }
    }
    std::ranges::sort (masks_, {}, [] (const Mask& mask) { return mask->name; });
    return masks_;
}

} // namespace stopwright
