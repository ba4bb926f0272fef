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
