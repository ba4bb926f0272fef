// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Error.h"

#include <string>

namespace stopwright
{

/// A document that cannot be used. what() is "FILE: WHERE: SENTENCE" with WHERE a line ("line 12") or a JSON path
/// ("/parts/0/value"), left out when the whole file is meant.
class DocumentError : public Error
{
public:
    DocumentError (const std::string& origin, const std::string& where, const std::string& sentence);

    const std::string& where() const noexcept { return where_; }

    const std::string& sentence() const noexcept { return sentence_; }

private:
    std::string where_;
    std::string sentence_;
};

} // namespace stopwright
