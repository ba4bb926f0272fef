// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TremulantEdit.h"

#include "Circuit/FindingWords.h"
#include "Organ/NamedItem.h"
#include "Organ/PlainText.h"
#include "Units/Error.h"

#include <algorithm>

namespace stopwright
{

namespace
{

void requireInRange (const ValueRange& range, double value, std::string_view outlet)
{
    const auto words = [&] (double number)
    { return range.quantity == Quantity::number ? numberText (number) : formatForReading (number, range.quantity); };
    if (! range.contains (value))
        throw Error ("The " + std::string (range.what) + " " + partWords (outlet) + " cannot be " + words (value)
                     + "; give it " + words (range.lowest) + " to " + words (range.highest) + ".");
}

} // namespace

const TremulantSettings* findTremulant (const Instrument& instrument, std::string_view outlet) noexcept
{
    const auto found = std::ranges::find (instrument.outlets, outlet, &Outlet::name);
    return found != instrument.outlets.end() && found->kind == OutletKind::tremulant ? &found->tremulant : nullptr;
}

Instrument setTremulant (Instrument instrument, std::string_view outlet, const TremulantSettings& settings)
{
    auto& item = itemNamed (instrument.outlets, "outlet", inThisInstrument, outlet);
    if (item.kind != OutletKind::tremulant)
        throw Error ("The outlet " + partWords (outlet)
                     + " has no tremulant to set; give it the kind \"tremulant\" in the instrument's document first.");
    requireInRange (TremulantLimits::rate, settings.rateHz, outlet);
    requireInRange (TremulantLimits::depth, settings.depth, outlet);
    item.tremulant = settings;
    return instrument;
}

} // namespace stopwright
