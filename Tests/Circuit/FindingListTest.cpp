// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/FindingList.h"

#include <gtest/gtest.h>
#include <utility>

namespace stopwright
{
namespace
{

TEST (FindingList, GivesErrorsFirstAndEverySentenceOnce)
{
    FindingList list;
    list.addWarning ("a", "first");
    EXPECT_FALSE (list.hasErrors());
    list.addError ("b", "second");
    list.addError ("c", "third");
    list.addError ("b", "second");
    EXPECT_TRUE (list.hasErrors());

    const auto findings = std::move (list).take();
    ASSERT_EQ (findings.size(), 3U);
    EXPECT_EQ (findings[0].sentence, "second");
    EXPECT_EQ (findings[1].sentence, "third");
    EXPECT_EQ (findings[2].sentence, "first");
    EXPECT_EQ (findings[2].severity, Severity::warning);
}

} // namespace
} // namespace stopwright
