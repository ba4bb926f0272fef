// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/GlossaryTerms.h"

namespace stopwright
{

namespace
{

const juce::Identifier termProperty ("glossaryTerm");

} // namespace

void setTerm (juce::Component& component, const juce::String& term)
{
    component.getProperties().set (termProperty, term);
}

juce::String termOf (const juce::Component* component)
{
    for (; component != nullptr; component = component->getParentComponent())
        if (auto term = component->getProperties()[termProperty].toString(); term.isNotEmpty())
            return term;
    return {};
}

} // namespace stopwright
