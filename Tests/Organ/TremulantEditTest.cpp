// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/TremulantEdit.h"

#include "Organ/ChangeList.h"
#include "Organ/ErrorSentence.h"
#include "Organ/InstrumentDocument.h"
#include "Organ/TestOrgan.h"

#include <gtest/gtest.h>

#include <limits>

namespace stopwright
{

namespace
{

Instrument larkfield()
{
    return test::larkfield().instrument;
}

std::string refusal (const std::string& outlet, const TremulantSettings& settings)
{
    return errorSentence ([&] { setTremulant (larkfield(), outlet, settings); });
}

} // namespace

TEST (TremulantEdit, SetsWhatTheDocumentHoldsAndBack)
{
    const auto before = instrumentText (larkfield());
    const auto set = setTremulant (larkfield(), "Tremulant", { 5.5, 0.45 });
    ASSERT_NE (findTremulant (set, "Tremulant"), nullptr);
    EXPECT_EQ (*findTremulant (set, "Tremulant"), (TremulantSettings { 5.5, 0.45 }));
    EXPECT_EQ (*findTremulant (parseInstrument (instrumentText (set), "o"), "Tremulant"),
               (TremulantSettings { 5.5, 0.45 }));
    EXPECT_NE (instrumentText (set), before);
    EXPECT_EQ (instrumentText (setTremulant (set, "Tremulant", *findTremulant (larkfield(), "Tremulant"))), before);
}

TEST (TremulantEdit, IsAnAdjustmentAndNoAlteration)
{
    EXPECT_TRUE (changeList (setTremulant (larkfield(), "Tremulant", { 5.5, 0.45 })).empty());
}

TEST (TremulantEdit, OtherOutletsHaveNone)
{
    EXPECT_EQ (findTremulant (larkfield(), "Main"), nullptr);
    EXPECT_EQ (findTremulant (larkfield(), "Rotary"), nullptr);
    EXPECT_EQ (findTremulant (larkfield(), "Attic"), nullptr);
    EXPECT_NE (refusal ("Rotary", {}).find ("Rotary has no tremulant"), std::string::npos) << refusal ("Rotary", {});
    EXPECT_NE (refusal ("Tremulent", {}).find ("Tremulant"), std::string::npos) << refusal ("Tremulent", {});
}

TEST (TremulantEdit, RefusesWhatADocumentRefuses)
{
    EXPECT_NE (refusal ("Tremulant", { 25.0, 0.3 }).find ("100 mHz to 20.0 Hz"), std::string::npos)
        << refusal ("Tremulant", { 25.0, 0.3 });
    EXPECT_NE (refusal ("Tremulant", { 6.0, 1.0 }).find ("0 to 0.95"), std::string::npos)
        << refusal ("Tremulant", { 6.0, 1.0 });
    EXPECT_NE (refusal ("Tremulant", { std::numeric_limits<double>::quiet_NaN(), 0.3 }), "no error");
    EXPECT_EQ (refusal ("Tremulant", { 20.0, 0.95 }), "no error");
    EXPECT_EQ (refusal ("Tremulant", { 0.1, 0.0 }), "no error");
}

} // namespace stopwright
