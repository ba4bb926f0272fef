// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/ListFields.h"

#include "Organ/Spelling.h"
#include "Units/QuotedText.h"

namespace stopwright
{

void refuseSecond (const FieldReader& fields, std::string_view key, const std::string& name)
{
    fields.refuse (key, "the name " + quotedText (name) + " stands twice; give each a name of its own.");
}

void refuseStranger (const FieldReader& fields,
                     std::string_view key,
                     const std::string& name,
                     const std::vector<std::string_view>& names,
                     std::string_view word,
                     std::string_view list)
{
    const auto closest = closestWord (name, names);
    fields.refuse (key, "there is no " + std::string (word) + " " + quotedText (name) + " among the "
                            + std::string (list)
                            + (closest         ? "; did you mean " + quotedText (*closest) + "?"
                               : names.empty() ? ", for there are none; add it there."
                                               : "; add it there, or name one that is."));
}

} // namespace stopwright
