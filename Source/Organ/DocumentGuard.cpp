// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentGuard.h"

#include "Circuit/FindingWords.h"
#include "Organ/CardDocument.h"
#include "Organ/PlainText.h"
#include "Units/QuotedText.h"

namespace stopwright
{

namespace
{

/// A card that the reader takes, to which one thing is added.
Card leastCard()
{
    Tap tap;
    tap.name = "W1";
    tap.node = "out";
    Card card;
    card.taps.push_back (std::move (tap));
    card.output = "out";
    return card;
}

void requireReadable (const Card& card)
{
    try
    {
        parseCard (cardText (card), "card");
    }
    catch (const DocumentError& fault)
    {
        throw Error (capitalised (fault.sentence()));
    }
}

/// The writer puts something else in place of such bytes, so the reader never sees them.
void requireUtf8 (std::string_view name)
{
    if (firstByteNotUtf8 (name) != std::string_view::npos)
        throw Error ("The name " + quotedText (name) + " has bytes that are no text (UTF-8); type it again.");
}

} // namespace

void requireHeld (const Part& part)
{
    requireUtf8 (part.name);
    for (const auto& node : part.nodes)
        requireUtf8 (node);
    auto card = leastCard();
    card.parts.push_back (part);
    requireReadable (card);
}

void requireHeld (const Tap& tap)
{
    requireUtf8 (tap.name);
    requireUtf8 (tap.node);
    auto card = leastCard();
    card.taps.front() = tap;
    requireReadable (card);
}

void requireName (std::string_view name)
{
    requireUtf8 (name);
    auto card = leastCard();
    card.output = name;
    requireReadable (card);
}

} // namespace stopwright
