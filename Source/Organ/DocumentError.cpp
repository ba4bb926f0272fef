// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentError.h"

#include "Organ/PlainText.h"

namespace stopwright
{

namespace
{

std::string joined (const std::string& origin, const std::string& where, const std::string& sentence)
{
    return printable (origin, 400) + ": " + (where.empty() ? std::string() : where + ": ") + sentence;
}

} // namespace

DocumentError::DocumentError (const std::string& origin, const std::string& where, const std::string& sentence)
    : Error (joined (origin, where, sentence)),
      where_ (where),
      sentence_ (sentence)
{}

} // namespace stopwright
