// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// One word of the trade and what it means.
struct GlossaryTerm
{
    std::string name;
    std::vector<std::string> alsoCalled;
    std::string text;                 ///< a few plain sentences
    std::vector<std::string> seeAlso; ///< names of other terms
};

/// The words of the trade in alphabetical order, each with a text and the terms that go with it. Threading: [any] once
/// it is made.
class Glossary
{
public:
    /// Reads {"terms": [{"term", "also", "text", "see"}, ...]}. Fails: DocumentError with a sentence that names the term:
    /// one without a text, one that stands twice (as another term's second name too), one out of order, one that refers
    /// to what is not there or to itself.
    static Glossary parse (std::string_view text, std::string_view origin);

    const std::vector<GlossaryTerm>& terms() const noexcept { return terms_; }

    /// The term of that name or second name, letter case apart; nullptr when there is none.
    const GlossaryTerm* find (std::string_view name) const;

    /// The terms in which `wanted` stands, letter case apart: those whose name or second name begins with it first, then
    /// those with it elsewhere in a name, then in the text. All of them for an empty text.
    std::vector<const GlossaryTerm*> search (std::string_view wanted) const;

    /// The name or second name most like a misspelt one; empty when none is near.
    std::string closest (std::string_view name) const;

private:
    std::vector<GlossaryTerm> terms_;
};

} // namespace stopwright
