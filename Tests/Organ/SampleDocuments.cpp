// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/SampleDocuments.h"

#include <algorithm>
#include <atomic>
#include <fstream>
#include <iterator>
#include <unistd.h>

namespace stopwright
{

std::vector<std::filesystem::path> sampleDocuments (const std::string& folder, const std::string& kind)
{
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator (STOPWRIGHT_ROOT "/Tests/Organ/Documents/" + folder))
        if (entry.path().filename().string().starts_with (kind + "-"))
            files.push_back (entry.path());
    std::sort (files.begin(), files.end());
    return files;
}

std::string textOf (const std::filesystem::path& file)
{
    std::ifstream stream (file, std::ios::binary);
    return { std::istreambuf_iterator<char> (stream), {} };
}

TemporaryFolder::TemporaryFolder()
{
    static std::atomic<int> count = 0;
    const auto name = "stopwright-test-" + std::to_string (::getpid()) + "-" + std::to_string (++count);
    path_ = std::filesystem::temp_directory_path() / name;
    std::filesystem::create_directory (path_);
}

TemporaryFolder::~TemporaryFolder()
{
    std::error_code ignored;
    std::filesystem::remove_all (path_, ignored);
}

std::filesystem::path TemporaryFolder::write (const std::string& name, const std::string& text) const
{
    std::ofstream (file (name), std::ios::binary) << text;
    return file (name);
}

std::vector<std::string> TemporaryFolder::content() const
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator (path_))
        names.push_back (entry.path().filename().string());
    std::sort (names.begin(), names.end());
    return names;
}

} // namespace stopwright
