// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace stopwright
{

/// Which word of the trade a control is about, so that F1 and its tooltip lead to the glossary. Threading: message thread.

/// Ties a control, and all that stands in it without a term of its own, to a term of the glossary.
void setTerm (juce::Component& component, const juce::String& term);

/// The term of a control or of the nearest one that it stands in; empty for none, and for nullptr.
juce::String termOf (const juce::Component* component);

/// Whoever shows the glossary: the window.
class GlossaryOpener
{
public:
    virtual ~GlossaryOpener() = default;

    /// Opens it at a term; at its beginning when there is no such term.
    virtual void showGlossary (const juce::String& term) = 0;
};

} // namespace stopwright
