// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ProgramRun.h"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace stopwright
{

namespace
{

class Pipe
{
public:
    Pipe()
    {
        if (::pipe2 (ends_.data(), O_CLOEXEC) != 0)
            throw std::runtime_error ("no pipe");
    }

    ~Pipe()
    {
        closeWriting();
        ::close (ends_[0]);
    }

    Pipe (const Pipe&) = delete;
    Pipe& operator= (const Pipe&) = delete;
    Pipe (Pipe&&) = delete;
    Pipe& operator= (Pipe&&) = delete;

    int reading() const { return ends_[0]; }

    int writing() const { return ends_[1]; }

    void closeWriting()
    {
        if (ends_[1] >= 0)
            ::close (ends_[1]);
        ends_[1] = -1;
    }

private:
    std::array<int, 2> ends_ {};
};

/// Adds what there is to `text`; false at the end.
bool readSome (int descriptor, std::string& text)
{
    std::array<char, 65536> buffer {};
    const auto count = ::read (descriptor, buffer.data(), buffer.size());
    if (count > 0)
        text.append (buffer.data(), static_cast<std::size_t> (count));
    return count > 0;
}

bool hasTemporary (const std::filesystem::path& folder)
{
    for (const auto& entry : std::filesystem::directory_iterator (folder))
        if (entry.path().filename().string().starts_with (".stopwright-"))
            return true;
    return false;
}

[[noreturn]] void becomeProgram (std::vector<char*> arguments, const RunOptions& options, int out, int err)
{
    if (! options.standardOutput.empty())
        out = ::open (options.standardOutput.c_str(), O_WRONLY);
    ::dup2 (out, STDOUT_FILENO);
    ::dup2 (err, STDERR_FILENO);
    if (! options.folder.empty() && ::chdir (options.folder.c_str()) != 0)
        ::_exit (126);
    if (options.fileSizeLimit >= 0)
    {
        const auto bytes = static_cast<rlim_t> (options.fileSizeLimit);
        const rlimit limit { bytes, bytes };
        ::setrlimit (RLIMIT_FSIZE, &limit);
    }
    ::execv (STOPWRIGHT_PROGRAM, arguments.data());
    ::_exit (127);
}

void collect (pid_t child, const Pipe& out, const Pipe& err, const RunOptions& options, ProgramResult& result)
{
    constexpr int pollMilliseconds = 2;
    bool outOpen = true;
    bool errOpen = true;
    bool interrupted = options.interruptWhen.empty();
    while (outOpen || errOpen)
    {
        std::array<pollfd, 2> waiting { pollfd { outOpen ? out.reading() : -1, POLLIN, 0 },
                                        pollfd { errOpen ? err.reading() : -1, POLLIN, 0 } };
        ::poll (waiting.data(), waiting.size(), interrupted ? -1 : pollMilliseconds);
        if (! interrupted && hasTemporary (options.interruptWhen))
            interrupted = ::kill (child, SIGINT) == 0;
        if (waiting[0].revents != 0)
            outOpen = readSome (out.reading(), result.out);
        if (waiting[1].revents != 0)
            errOpen = readSome (err.reading(), result.err);
    }
}

} // namespace

int ProgramResult::errorLines() const
{
    return static_cast<int> (std::count (err.begin(), err.end(), '\n'));
}

ProgramResult runProgram (const std::vector<std::string>& arguments, const RunOptions& options)
{
    auto words = arguments;
    words.insert (words.begin(), "stopwright");
    std::vector<char*> pointers;
    for (auto& word : words)
        pointers.push_back (word.data());
    pointers.push_back (nullptr);

    Pipe out;
    Pipe err;
    const auto child = ::fork();
    if (child < 0)
        throw std::runtime_error ("no process");
    if (child == 0)
        becomeProgram (pointers, options, out.writing(), err.writing());
    out.closeWriting();
    err.closeWriting();

    ProgramResult result;
    collect (child, out, err, options, result);
    int status = 0;
    ::waitpid (child, &status, 0);
    result.status = WIFEXITED (status) ? WEXITSTATUS (status) : -WTERMSIG (status);
    return result;
}

ScratchFolder::ScratchFolder()
{
    auto pattern = (std::filesystem::temp_directory_path() / "stopwright-test-XXXXXX").string();
    if (::mkdtemp (pattern.data()) == nullptr)
        throw std::runtime_error ("no scratch folder");
    path_ = pattern;
    std::filesystem::create_directory_symlink (std::filesystem::path (STOPWRIGHT_ROOT) / "Presets", path_ / "Presets");
}

ScratchFolder::~ScratchFolder()
{
    std::error_code ignored;
    std::filesystem::remove_all (path_, ignored);
}

std::string ScratchFolder::write (std::string_view name, std::string_view content) const
{
    const auto file = path_ / name;
    std::ofstream (file, std::ios::binary) << content;
    return file.string();
}

std::vector<std::string> ScratchFolder::files() const
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator (path_))
        if (! entry.is_symlink())
            names.push_back (entry.path().filename().string());
    std::sort (names.begin(), names.end());
    return names;
}

std::string preset (std::string_view name)
{
    return (std::filesystem::path (STOPWRIGHT_ROOT) / "Presets" / name).string();
}

std::vector<std::vector<double>> csvRows (const std::string& text)
{
    std::istringstream lines (text);
    std::vector<std::vector<double>> rows;
    std::string line;
    std::getline (lines, line);
    while (std::getline (lines, line))
    {
        std::istringstream cells (line);
        std::string cell;
        rows.emplace_back();
        while (std::getline (cells, cell, ','))
            rows.back().push_back (std::strtod (cell.c_str(), nullptr));
    }
    return rows;
}

std::string firstLine (const std::string& text)
{
    return text.substr (0, text.find ('\n'));
}

} // namespace stopwright
