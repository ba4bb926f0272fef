// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TermTooltips.h"

#include "Bench/GlossaryTerms.h"

namespace stopwright
{

juce::String TermTooltips::leadTo (const juce::String& term)
{
    return "F1: " + term;
}

juce::String TermTooltips::getTipFor (juce::Component& component)
{
    const auto tip = TooltipWindow::getTipFor (component);
    const auto term = termOf (&component);
    return tip.isEmpty() || term.isEmpty() ? tip : tip + "\n" + leadTo (term);
}

} // namespace stopwright
