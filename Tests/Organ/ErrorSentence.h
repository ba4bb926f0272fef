// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Error.h"

#include <string>

namespace stopwright
{

/// Runs it and returns the sentence of the Error it throws; "no error" when it throws none.
std::string errorSentence (const auto& function)
{
    try
    {
        function();
    }
    catch (const Error& error)
    {
        return error.what();
    }
    return "no error";
}

} // namespace stopwright
