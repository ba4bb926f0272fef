// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SvgWriter.h"

#include "Sheet/XmlCheck.h"

#include <gtest/gtest.h>

namespace stopwright
{
namespace
{

Drawing sample()
{
    Drawing drawing;
    drawing.width = 200.0;
    drawing.height = 100.0;
    drawing.areas.push_back ({ { { 0, 0 }, { 10, 0 }, { 10, 10 } }, Ink::source, true });
    drawing.areas.push_back ({ { { 0, 0 }, { 10, 0 }, { 10, 10 } }, Ink::result, false, 0.5 });
    drawing.lines.push_back ({ { { 1.25, 2 }, { 3, 4 } }, Ink::ink, 1.5, false, true });
    drawing.lines.push_back ({ { { 1, 2 }, { 3, 4 }, { 5, 2 } }, Ink::grid, 1.0, true, false });
    drawing.texts.push_back ({ { 5, 6 }, "R < 4k7 & \"C\"\x01 \u03a9", 11.0, TextAlign::right, true, Ink::notice });
    return drawing;
}

TEST (SvgWriter, IsWellFormed)
{
    EXPECT_EQ (test::xmlFault (svgText (sample())), "");
}

// The check above can fail.
TEST (SvgWriter, ACutOffDocumentIsNotWellFormed)
{
    const auto text = svgText (sample());
    EXPECT_NE (test::xmlFault (text.substr (0, text.size() - 8)), "");
    EXPECT_NE (test::xmlFault ("<svg><a></b></svg>"), "");
    EXPECT_NE (test::xmlFault ("<svg>a & b</svg>"), "");
}

TEST (SvgWriter, EscapesTextsAndKeepsThemUtf8)
{
    const auto text = svgText (sample());
    EXPECT_NE (text.find ("R &lt; 4k7 &amp; \"C\"? \u03a9</text>"), std::string::npos) << text;
    EXPECT_NE (text.find ("text-anchor=\"end\""), std::string::npos);
    EXPECT_NE (text.find ("font-weight=\"bold\""), std::string::npos);
}

TEST (SvgWriter, WritesShapesInTheInksOfTheMedium)
{
    const auto text = svgText (sample());
    EXPECT_NE (text.find ("viewBox=\"0 0 200 100\""), std::string::npos);
    EXPECT_NE (text.find ("<pattern id=\"hatch-9baebe\""), std::string::npos) << text;
    EXPECT_NE (text.find ("fill=\"url(#hatch-9baebe)\""), std::string::npos);
    EXPECT_NE (text.find ("<polyline points=\"1.25,2 3,4\" fill=\"none\" stroke=\"#1b2430\""), std::string::npos);
    EXPECT_NE (text.find ("stroke-dasharray"), std::string::npos);
    EXPECT_NE (text.find ("fill=\"#85adca\""), std::string::npos) << "half of the result's ink on white";

    InkColours night = InkColours::print();
    night.colours[static_cast<std::size_t> (Ink::sheet)] = { 0, 0, 0 };
    EXPECT_NE (svgText (sample(), night).find ("fill=\"#000000\""), std::string::npos);
}

} // namespace
} // namespace stopwright
