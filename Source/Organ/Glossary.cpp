// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Glossary.h"

#include "Organ/DocumentLimits.h"
#include "Organ/FieldReader.h"
#include "Organ/Spelling.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>

namespace stopwright
{

namespace
{

constexpr std::size_t mostTerms = 512;
constexpr std::size_t mostReferences = 16;
constexpr std::size_t textCharacters = 1000;

/// Letter case apart, for the letters of English: others stay as they are.
std::string lower (std::string_view text)
{
    std::string result (text);
    std::ranges::transform (result, result.begin(),
                            [] (unsigned char letter) { return static_cast<char> (std::tolower (letter)); });
    return result;
}

std::vector<std::string> namesOf (const GlossaryTerm& term)
{
    std::vector<std::string> names { term.name };
    names.insert (names.end(), term.alsoCalled.begin(), term.alsoCalled.end());
    return names;
}

GlossaryTerm readTerm (FieldReader& fields)
{
    GlossaryTerm term;
    term.name = fields.name ("term");
    fields.setLabel ("term '" + term.name + "'");
    if (fields.has ("also"))
        term.alsoCalled = fields.distinctNames ("also", mostReferences);
    term.text = fields.freeText ("text", textCharacters);
    if (term.text.empty())
        fields.refuse ("text", "the term '" + term.name + "' has no text; say what it means.");
    if (fields.has ("see"))
        term.seeAlso = fields.distinctNames ("see", mostReferences);
    return term;
}

/// Where `wanted` stands in a term: 0 at the beginning of a name, 1 within one, 2 in the text; -1 nowhere.
int placeIn (const GlossaryTerm& term, const std::string& wanted)
{
    constexpr int beginning = 0;
    constexpr int within = 1;
    constexpr int inText = 2;
    int best = lower (term.text).find (wanted) != std::string::npos ? inText : -1;
    for (const auto& name : namesOf (term))
    {
        const auto found = lower (name).find (wanted);
        if (found == 0)
            return beginning;
        if (found != std::string::npos)
            best = within;
    }
    return best;
}

} // namespace

Glossary Glossary::parse (std::string_view text, std::string_view origin)
{
    const std::string from (origin);
    const auto tree = parseJson (text, from);
    FieldReader document (tree, from, {}, {});
    Glossary glossary;
    std::map<std::string, std::string> owners; // of each name
    auto readers = document.objects ("terms", "term", 1, mostTerms);
    for (auto& fields : readers)
    {
        auto term = readTerm (fields);
        if (! glossary.terms_.empty() && lower (term.name) < lower (glossary.terms_.back().name))
            fields.refuse ("term", "the term '" + term.name + "' stands after '" + glossary.terms_.back().name
                                       + "'; the glossary is in alphabetical order.");
        for (const auto& name : namesOf (term))
            if (const auto [owner, isFirst] = owners.try_emplace (lower (name), term.name); ! isFirst)
                fields.refuse ("term", "'" + name + "' of the term '" + term.name + "' is a name of '" + owner->second
                                           + "' already; leave one out.");
        glossary.terms_.push_back (std::move (term));
    }

    for (std::size_t index = 0; index < readers.size(); ++index)
        for (const auto& name : glossary.terms_[index].seeAlso)
        {
            const auto* const other = glossary.find (name);
            if (other == nullptr || other->name != name || other == &glossary.terms_[index])
                readers[index].refuse ("see", "the term '" + glossary.terms_[index].name + "' refers to '" + name
                                                  + "', which is no other term; write one, or leave it out.");
        }
    return glossary;
}

const GlossaryTerm* Glossary::find (std::string_view name) const
{
    const auto wanted = lower (name);
    const auto isIt = [&wanted] (const std::string& candidate) { return lower (candidate) == wanted; };
    const auto found =
        std::ranges::find_if (terms_, [&] (const GlossaryTerm& term)
                              { return isIt (term.name) || std::ranges::any_of (term.alsoCalled, isIt); });
    return found == terms_.end() ? nullptr : &*found;
}

std::vector<const GlossaryTerm*> Glossary::search (std::string_view wanted) const
{
    std::array<std::vector<const GlossaryTerm*>, 3> byPlace;
    const auto text = lower (wanted);
    for (const auto& term : terms_)
        if (const int place = text.empty() ? 0 : placeIn (term, text); place >= 0)
            byPlace.at (static_cast<std::size_t> (place)).push_back (&term);
    std::vector<const GlossaryTerm*> found;
    for (const auto& terms : byPlace)
        found.insert (found.end(), terms.begin(), terms.end());
    return found;
}

std::string Glossary::closest (std::string_view name) const
{
    std::vector<std::string> names;
    for (const auto& term : terms_)
        for (const auto& called : namesOf (term))
            names.push_back (called);
    const std::vector<std::string_view> views (names.begin(), names.end());
    return std::string (closestWord (name, views).value_or (std::string_view {}));
}

} // namespace stopwright
