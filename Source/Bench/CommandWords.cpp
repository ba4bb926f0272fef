// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/CommandWords.h"

namespace stopwright
{

namespace
{

constexpr const char* usage =
    "Usage: stopwright-bench [DOCUMENT]\n\n"
    "Opens the voicing bench on a card or an instrument; without DOCUMENT, on the demonstration\n"
    "organ that comes with the program.\n\n"
    "  -h, --help   this text\n"
    "  --version    the version of the program\n";

constexpr int wrongUsage = 2;

} // namespace

CommandWords readCommandWords (int argumentCount, const char* const* arguments)
{
    for (int index = 1; index < argumentCount; ++index)
    {
        const std::string word = arguments[index];
        if (word == "--help" || word == "-h")
            return { 0, usage };
        if (word == "--version")
            return { 0, "stopwright-bench " STOPWRIGHT_VERSION "\n" };
        if (word.starts_with ('-'))
            return { wrongUsage, "stopwright-bench: there is no option " + word + ".\n\n" + usage };
    }
    if (argumentCount > 2)
        return { wrongUsage, std::string ("stopwright-bench: one document at a time, please.\n\n") + usage };
    return {};
}

} // namespace stopwright
