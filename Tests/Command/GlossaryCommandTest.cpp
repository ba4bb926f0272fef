// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"
#include "Command/TradeGlossary.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>

namespace stopwright
{

TEST (GlossaryCommand, ListsEveryTerm)
{
    const auto result = runProgram ({ "glossary" });
    EXPECT_EQ (result.status, 0);
    std::istringstream lines (result.out);
    std::size_t count = 0;
    for (std::string line; std::getline (lines, line); ++count)
        EXPECT_NE (tradeGlossary().find (line), nullptr) << line;
    EXPECT_EQ (count, tradeGlossary().terms().size());
}

TEST (GlossaryCommand, TellsATermByItsNameOrAnother)
{
    const auto result = runProgram ({ "glossary", "Mixing Resistor" });
    EXPECT_EQ (result.status, 0);
    EXPECT_TRUE (result.out.starts_with ("mixing resistor\n  From a stop's output to the mixing bus.")) << result.out;
    EXPECT_NE (result.out.find ("See also: loading, mixing bus, retired grounded, virtual earth"), std::string::npos);
    EXPECT_TRUE (runProgram ({ "glossary", "dcr" }).out.starts_with ("winding, also: winding resistance, DCR\n"));
}

TEST (GlossaryCommand, ItsLinesFitATerminal)
{
    for (const auto& term : tradeGlossary().terms())
    {
        const auto result = runProgram ({ "glossary", term.name });
        EXPECT_EQ (result.status, 0) << term.name;
        std::istringstream lines (result.out);
        std::string joined;
        for (std::string line; std::getline (lines, line);)
        {
            EXPECT_LE (line.size(), 100U) << line;
            joined += line.substr (line.find_first_not_of (' ')) + " ";
        }
        EXPECT_NE (joined.find (term.text), std::string::npos) << joined;
    }
}

TEST (GlossaryCommand, RefusesAWordItDoesNotKnowAndOffersOthers)
{
    const auto misspelt = runProgram ({ "glossary", "fromant" });
    EXPECT_EQ (misspelt.status, 1);
    EXPECT_EQ (misspelt.err, "stopwright: The glossary has no term \"fromant\"; these may help: formant.\n");

    const auto part = runProgram ({ "glossary", "virtual" });
    EXPECT_NE (part.err.find ("virtual earth"), std::string::npos) << part.err;

    const auto foreign = runProgram ({ "glossary", "zither\x1b[31m" });
    EXPECT_EQ (foreign.status, 1);
    EXPECT_NE (foreign.err.find ("lists those there are"), std::string::npos) << foreign.err;
    EXPECT_EQ (foreign.err.find ('\x1b'), std::string::npos);
}

} // namespace stopwright
