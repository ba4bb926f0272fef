// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace stopwright
{

/// What a run of the program left behind.
struct ProgramResult
{
    int status = -1; ///< exit status; minus the signal's number when a signal ended it
    std::string out;
    std::string err;

    /// Number of lines on standard error.
    int errorLines() const;
};

struct RunOptions
{
    std::filesystem::path folder;         ///< working directory; empty: that of the test
    long fileSizeLimit = -1;              ///< bytes a file may grow to, as on a full disc
    std::filesystem::path interruptWhen;  ///< sends SIGINT once a file of this folder begins with .stopwright-
    std::filesystem::path standardOutput; ///< where standard output goes instead of ProgramResult::out
};

/// Runs the real executable with these arguments, no shell between. Not thread-safe.
ProgramResult runProgram (const std::vector<std::string>& arguments, const RunOptions& options = {});

/// A folder of its own that vanishes with its content. Presets/ of the project can be reached in it.
class ScratchFolder
{
public:
    ScratchFolder();
    ~ScratchFolder();
    ScratchFolder (const ScratchFolder&) = delete;
    ScratchFolder& operator= (const ScratchFolder&) = delete;
    ScratchFolder (ScratchFolder&&) = delete;
    ScratchFolder& operator= (ScratchFolder&&) = delete;

    const std::filesystem::path& path() const noexcept { return path_; }

    std::filesystem::path operator/ (std::string_view name) const { return path_ / name; }

    /// Writes a file into it and returns its path.
    std::string write (std::string_view name, std::string_view content) const;

    /// Names of all files in it besides the link to Presets, sorted.
    std::vector<std::string> files() const;

private:
    std::filesystem::path path_;
};

/// A file of Presets/.
std::string preset (std::string_view name);

/// Rows of a CSV text after its header; every cell a number, "-inf" included.
std::vector<std::vector<double>> csvRows (const std::string& text);

/// The first line of a text.
std::string firstLine (const std::string& text);

} // namespace stopwright
