// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentError.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// Documents of Tests/Organ/Documents: "good" or "bad", whose names begin with "card-", "instrument-" or "mask-", sorted.
std::vector<std::filesystem::path> sampleDocuments (const std::string& folder, const std::string& kind);

std::string textOf (const std::filesystem::path& file);

/// A folder for one test that is removed with all in it afterwards.
class TemporaryFolder
{
public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder (const TemporaryFolder&) = delete;
    TemporaryFolder& operator= (const TemporaryFolder&) = delete;

    std::filesystem::path file (const std::string& name) const { return path_ / name; }

    std::filesystem::path write (const std::string& name, const std::string& text) const;

    /// Names of what is in it, hidden files too.
    std::vector<std::string> content() const;

private:
    std::filesystem::path path_;
};

/// Runs it and returns the message of the DocumentError it throws; "no error" when it throws none.
std::string refusalOf (const auto& function)
{
    try
    {
        function();
    }
    catch (const DocumentError& error)
    {
        return error.what();
    }
    return "no error";
}

} // namespace stopwright
