// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Card.h"
#include "Organ/DocumentError.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace stopwright
{

/// Reads a card from JSON text. `origin` (a file name) stands in front of every sentence. Checks form and ranges, not
/// whether the network can be solved (NetlistCheck does). The text is untrusted: over 4 MiB, nesting deeper than 64,
/// numbers that are not finite, wrong types, other versions and invalid UTF-8 are refused.
/// Threading: [control]. Fails: DocumentError with line or JSON path and one sentence.
Card parseCard (std::string_view text, std::string_view origin);
Card readCard (const std::filesystem::path& file);

/// Text of a card: UTF-8 JSON, two-space indent, values in engineering notation; parseCard gives the same card back.
std::string cardText (const Card& card);

/// Writes atomically: to a temporary file beside it, flushed, then renamed over. Fails: DocumentError.
void writeCard (const Card& card, const std::filesystem::path& file);

} // namespace stopwright
