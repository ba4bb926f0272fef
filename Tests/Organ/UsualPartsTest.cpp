// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/UsualParts.h"

#include <gtest/gtest.h>

namespace stopwright
{

TEST (UsualParts, AreOneOfEachKindInTheirOrder)
{
    const auto parts = usualParts();
    ASSERT_EQ (parts.size(), std::variant_size_v<PartValue>);
    for (std::size_t kind = 0; kind < parts.size(); ++kind)
        EXPECT_EQ (parts[kind].index(), kind);
}

TEST (UsualParts, HaveTheLettersOfADrawing)
{
    std::string letters;
    for (const auto& part : usualParts())
        letters.append (partLetters (part)).append (" ");
    EXPECT_EQ (letters, "R C L VR S U D Q Q V ");
}

} // namespace stopwright
