// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetworkFault.h"

namespace stopwright
{

namespace
{

std::string quotedList (const std::vector<std::string>& names)
{
    std::string list;
    for (const auto& name : names)
        list += (list.empty() ? "'" : ", '") + name + "'";
    return list;
}

} // namespace

std::string sentenceFor (const NetworkFault& fault)
{
    const std::string subject = "'" + fault.subject + "'";
    const std::string others = quotedList (fault.others);
    switch (fault.kind)
    {
        case NetworkFault::Kind::none:
            return {};
        case NetworkFault::Kind::sourceTied:
            return "Source " + subject + " drives a node whose voltage " + others
                   + " fixes already; give the source a resistance or another node.";
        case NetworkFault::Kind::outputTied:
            return "The output of op-amp " + subject + " is tied to a node whose voltage " + others
                   + " fixes already; put a resistor between them.";
        case NetworkFault::Kind::opAmpWithoutFeedback:
            return "Nothing decides where the output of op-amp " + subject
                   + " stands; connect a feedback path from its output to its minus input.";
        case NetworkFault::Kind::floating:
            return "Nothing decides the voltage of node " + others + "; connect it to common through a resistor.";
        case NetworkFault::Kind::outputFollowsRate:
            return "Node " + subject
                   + " follows how fast a source changes, without limit; put a resistor in series with the capacitor "
                     "that feeds it.";
        case NetworkFault::Kind::unsolvable:
            return "The feedback around " + subject
                   + " leaves no solution in time; put a resistor in series with a capacitor in that loop.";
        case NetworkFault::Kind::valuesTooFarApart:
            break;
    }
    return "The values of this network cancel or lie too far apart to be computed; change the extreme ones.";
}

} // namespace stopwright
