// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright::test
{

/// What keeps a text from being well-formed XML as this program writes it: tags that do not match, quotes that do not
/// close, "&" or "<" where they may not stand, control characters. Empty when nothing does. It knows no comments, CDATA
/// or document types. Source: W3C, Extensible Markup Language 1.0.
std::string xmlFault (std::string_view text);

} // namespace stopwright::test
