// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/LinearForm.h"

#include <algorithm>

namespace stopwright
{

void LinearForm::add (int index, double weight)
{
    const auto place = std::lower_bound (terms_.begin(), terms_.end(), index,
                                         [] (const Term& term, int wanted) { return term.index < wanted; });
    if (place == terms_.end() || place->index != index)
    {
        if (weight != 0.0)
            terms_.insert (place, { index, weight });
        return;
    }
    place->weight += weight;
    if (place->weight == 0.0)
        terms_.erase (place);
}

void LinearForm::add (const LinearForm& other, double scale)
{
    for (const auto& term : other.terms_)
        add (term.index, scale * term.weight);
}

LinearForm difference (const LinearForm& a, const LinearForm& b)
{
    LinearForm result = a;
    result.add (b, -1.0);
    return result;
}

} // namespace stopwright
