// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TrialDifference.h"

#include "Organ/PartTexts.h"

#include <algorithm>
#include <cstddef>

namespace stopwright
{

namespace
{

template <typename Item>
const Item* findIn (const std::vector<Item>& items, const std::string& name)
{
    const auto found = std::ranges::find (items, name, &Item::name);
    return found == items.end() ? nullptr : &*found;
}

/// `a` and `b` are texts of the same kind, so that the same place tells of the same number.
void compare (const std::string& name,
              const NumberTexts& a,
              const NumberTexts& b,
              std::vector<TrialDifference>& differences)
{
    for (std::size_t index = 0; index < a.size(); ++index)
        if (a[index].text != b[index].text)
            differences.push_back ({ TrialDifference::Kind::changed,
                                     a[index].label.empty() ? name : name + " " + a[index].label, a[index].text,
                                     b[index].text });
}

void compare (const Tap& a, const Tap& b, std::vector<TrialDifference>& differences)
{
    compare (a.name, textsOf (a), textsOf (b), differences);
}

void compare (const Part& a, const Part& b, std::vector<TrialDifference>& differences)
{
    if (a.value.index() == b.value.index())
        compare (a.name, textsOf (a.value), textsOf (b.value), differences);
    else
        differences.push_back ({ TrialDifference::Kind::changed, a.name, summaryOf (a), summaryOf (b) });
    if (! joinsTheSame (a, b))
        differences.push_back ({ TrialDifference::Kind::changed, a.name + " leads", leadsText (a), leadsText (b) });
    if (a.tolerance != b.tolerance)
        differences.push_back (
            { TrialDifference::Kind::changed, a.name + " tolerance", toleranceText (a), toleranceText (b) });
}

template <typename Item>
void compareAll (const std::vector<Item>& a, const std::vector<Item>& b, std::vector<TrialDifference>& differences)
{
    for (const Item& item : a)
    {
        if (const Item* const other = findIn (b, item.name))
            compare (item, *other, differences);
        else
            differences.push_back ({ TrialDifference::Kind::missing, item.name, summaryOf (item), {} });
    }
    for (const Item& item : b)
        if (findIn (a, item.name) == nullptr)
            differences.push_back ({ TrialDifference::Kind::missing, item.name, {}, summaryOf (item) });
}

} // namespace

std::string TrialDifference::words() const
{
    switch (kind)
    {
        case Kind::missing:
            return name + (inB.empty() ? " only in A" : " only in B");
        case Kind::output:
            return name + " moved from " + inA + " to " + inB;
        case Kind::changed:
            break;
    }
    return name + " " + inA + " / " + inB;
}

std::vector<TrialDifference> trialDifferences (const Card& a, const Card& b)
{
    std::vector<TrialDifference> differences;
    compareAll (a.taps, b.taps, differences);
    compareAll (a.parts, b.parts, differences);
    if (a.output != b.output)
        differences.push_back ({ TrialDifference::Kind::output, "output", a.output, b.output });
    return differences;
}

std::string differenceWords (std::span<const TrialDifference> differences)
{
    std::string words;
    for (const TrialDifference& difference : differences)
        words.append (words.empty() ? "" : "; ").append (difference.words());
    return words.empty() ? "no difference" : words;
}

} // namespace stopwright
