// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/GlossaryCommand.h"

#include "Command/TradeGlossary.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <ostream>
#include <string_view>
#include <vector>

namespace stopwright
{

namespace
{

constexpr const char* footer = "Without TERM: the names of all terms. The bench shows the same texts: press F1 there.\n"
                               "Examples:\n"
                               "  stopwright glossary\n"
                               "  stopwright glossary \"mixing resistor\"\n"
                               "  stopwright glossary DCR";

constexpr std::size_t lineCharacters = 100;

std::string listOf (const std::vector<std::string>& names)
{
    std::string list;
    for (const auto& name : names)
        list += (list.empty() ? "" : ", ") + name;
    return list;
}

/// A text in lines for a terminal, each set in by two spaces.
void printWrapped (std::string_view text, std::ostream& out)
{
    std::size_t column = 0;
    while (! text.empty())
    {
        const auto word = text.substr (0, text.find (' '));
        text.remove_prefix (std::min (text.size(), word.size() + 1));
        if (column == 0 || column + 1 + word.size() > lineCharacters)
        {
            out << (column == 0 ? "  " : "\n  ");
            column = 2;
        }
        else
        {
            out << ' ';
            ++column;
        }
        out << word;
        column += word.size();
    }
    out << '\n';
}

void print (const GlossaryTerm& term, std::ostream& out)
{
    out << term.name << (term.alsoCalled.empty() ? "" : ", also: " + listOf (term.alsoCalled)) << '\n';
    printWrapped (term.text, out);
    if (! term.seeAlso.empty())
        printWrapped ("See also: " + listOf (term.seeAlso), out);
}

} // namespace

void GlossaryCommand::declare (CLI::App& program)
{
    auto* const app = program.add_subcommand (name(), "Say what a word of the trade means");
    app->add_option ("TERM", term_, "The word, as in \"mixing resistor\"")->type_name ("TERM");
    app->footer (footer);
}

ExitStatus GlossaryCommand::run (std::ostream& out, std::ostream& /*err*/)
{
    const auto& glossary = tradeGlossary();
    if (term_.empty())
    {
        for (const auto& term : glossary.terms())
            out << term.name << '\n';
        return ExitStatus::success;
    }
    if (const auto* const term = glossary.find (term_))
    {
        print (*term, out);
        return ExitStatus::success;
    }

    std::vector<std::string> near;
    for (const auto* const term : glossary.search (term_))
        near.push_back (term->name);
    if (const auto closest = glossary.closest (term_); near.empty() && ! closest.empty())
        near.push_back (closest);
    const auto hint = near.empty() ? std::string ("\"stopwright glossary\" lists those there are.")
                                   : "these may help: " + listOf (near) + ".";
    throw Error ("The glossary has no term " + quotedText (term_) + "; " + hint);
}

} // namespace stopwright
