// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentFile.h"

#include "Organ/DocumentLimits.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>
#include <vector>

namespace stopwright
{

namespace
{

[[noreturn]] void refuse (const std::filesystem::path& file, const std::string& sentence)
{
    throw DocumentError (file.string(), {}, sentence);
}

[[noreturn]] void
    refuseBySystem (const std::filesystem::path& file, const std::string& what, int error, const std::string& wayOut)
{
    refuse (file, what + " (" + std::generic_category().message (error) + "); " + wayOut + ".");
}

constexpr const char* checkPermissions = "check the permissions of the file and of its folder";
constexpr const char* writeElsewhere = "check the folder and the space on the disc, or name another file";

/// An open file that is closed when it goes out of scope.
class OpenFile
{
public:
    explicit OpenFile (int descriptor) noexcept : descriptor_ (descriptor) {}

    ~OpenFile()
    {
        if (descriptor_ >= 0)
            ::close (descriptor_);
    }

    OpenFile (const OpenFile&) = delete;
    OpenFile& operator= (const OpenFile&) = delete;
    OpenFile (OpenFile&&) = delete;
    OpenFile& operator= (OpenFile&&) = delete;

    int descriptor() const noexcept { return descriptor_; }

    /// Closes early, since only close tells that a network disc refused the last bytes. 0 or the error.
    int close() noexcept
    {
        const int result = ::close (descriptor_) == 0 ? 0 : errno;
        descriptor_ = -1;
        return result;
    }

private:
    int descriptor_;
};

std::string kindOfFile (mode_t mode)
{
    if (S_ISDIR (mode))
        return "a directory";
    if (S_ISFIFO (mode))
        return "a pipe";
    if (S_ISSOCK (mode))
        return "a socket";
    return "a device";
}

void requireRegular (const std::filesystem::path& file, const struct stat& status)
{
    if (! S_ISREG (status.st_mode))
        refuse (file, "this is " + kindOfFile (status.st_mode) + ", not a file that can hold a document; name a file.");
}

void requireSize (const std::filesystem::path& file, std::size_t size)
{
    if (size > DocumentLimits::bytes)
        refuse (file, "the file is larger than 4 MiB, so it is no document of this program; name another.");
}

std::string contentOf (const std::filesystem::path& file, int descriptor)
{
    std::string text;
    std::vector<char> piece (std::size_t { 64 } << 10);
    for (;;)
    {
        const auto count = ::read (descriptor, piece.data(), piece.size());
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0)
            refuseBySystem (file, "the file cannot be read", errno, "check the disc, or take a copy of it");
        if (count == 0)
            return text;
        text.append (piece.data(), static_cast<std::size_t> (count));
        requireSize (file, text.size()); // it may grow, or state no size, as files of /proc do
    }
}

/// Follows links by hand, since a link may also point to a file that is still to be made.
std::filesystem::path targetOf (const std::filesystem::path& file)
{
    auto target = file;
    constexpr int mostLinks = 40;
    for (int i = 0; i < mostLinks; ++i)
    {
        std::error_code fault;
        const auto next = std::filesystem::read_symlink (target, fault);
        if (fault)
            return target;
        target = target.parent_path() / next;
    }
    refuse (file, "the symbolic links go round in a circle; name the file itself.");
}

/// A new file with a name of its own that is removed again unless it is kept.
class TemporaryFile
{
public:
    explicit TemporaryFile (const std::filesystem::path& target) : path_ (target.parent_path()), file_ (create (target))
    {}

    ~TemporaryFile()
    {
        if (! renamed_)
            ::unlink (path_.c_str());
    }

    TemporaryFile (const TemporaryFile&) = delete;
    TemporaryFile& operator= (const TemporaryFile&) = delete;
    TemporaryFile (TemporaryFile&&) = delete;
    TemporaryFile& operator= (TemporaryFile&&) = delete;

    void write (std::string_view text, const std::filesystem::path& target)
    {
        while (! text.empty())
        {
            const auto count = ::write (file_.descriptor(), text.data(), text.size());
            if (count < 0 && errno != EINTR)
                refuseBySystem (target, "the file cannot be written", errno, writeElsewhere);
            text.remove_prefix (count > 0 ? static_cast<std::size_t> (count) : 0);
        }
    }

    void takePermissions (const struct stat& status, const std::filesystem::path& target)
    {
        // Another owner can only be kept by root; a group, by its members. What cannot be kept is no reason not to
        // save.
        if (::fchown (file_.descriptor(), status.st_uid, status.st_gid) != 0
            && ::fchown (file_.descriptor(), static_cast<uid_t> (-1), status.st_gid) != 0)
            errno = 0;
        if (::fchmod (file_.descriptor(), status.st_mode & 0777U) != 0)
            refuseBySystem (target, "the permissions cannot be kept", errno, writeElsewhere);
    }

    void renameTo (const std::filesystem::path& target)
    {
        if (::fsync (file_.descriptor()) != 0)
            refuseBySystem (target, "the file cannot be written", errno, writeElsewhere);
        if (const int error = file_.close(); error != 0)
            refuseBySystem (target, "the file cannot be written", error, writeElsewhere);
        if (::rename (path_.c_str(), target.c_str()) != 0)
            refuseBySystem (target, "the file cannot be replaced", errno, writeElsewhere);
        renamed_ = true;
    }

private:
    int create (const std::filesystem::path& target)
    {
        const auto folder = path_;
        constexpr int attempts = 100;
        for (int i = 0; i < attempts; ++i)
        {
            path_ = folder / (".stopwright-" + std::to_string (::getpid()) + "-" + std::to_string (i) + ".tmp");
            const int descriptor = ::open (path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            if (descriptor >= 0)
                return descriptor;
            if (errno != EEXIST)
                break;
        }
        refuseBySystem (target, "no file can be written in this folder", errno, writeElsewhere);
    }

    std::filesystem::path path_;
    OpenFile file_;
    bool renamed_ = false;
};

/// So that the new name survives a power cut too. Some file systems cannot do it; the file is whole all the same.
void flushFolder (const std::filesystem::path& target)
{
    const auto folder = target.has_parent_path() ? target.parent_path() : std::filesystem::path (".");
    const OpenFile opened (::open (folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (opened.descriptor() >= 0)
        ::fsync (opened.descriptor());
}

} // namespace

std::string readDocumentFile (const std::filesystem::path& file)
{
    struct stat status = {};
    if (::stat (file.c_str(), &status) != 0)
        refuseBySystem (file, "the file cannot be found", errno, "check its name and its folder");
    requireRegular (file, status);

    const OpenFile opened (::open (file.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
    if (opened.descriptor() < 0)
        refuseBySystem (file, "the file cannot be opened", errno, checkPermissions);
    if (::fstat (opened.descriptor(), &status) != 0)
        refuseBySystem (file, "the file cannot be read", errno, "check the disc, or take a copy of it");
    requireRegular (file, status); // it may have been exchanged in between
    requireSize (file, static_cast<std::size_t> (status.st_size));
    return contentOf (file, opened.descriptor());
}

void writeDocumentFile (std::string_view text, const std::filesystem::path& file)
{
    const auto target = targetOf (file);
    struct stat status = {};
    const bool exists = ::stat (target.c_str(), &status) == 0;
    if (exists)
    {
        requireRegular (file, status);
        if (::access (target.c_str(), W_OK) != 0)
            refuseBySystem (file, "the file is write-protected", errno, "lift that, or name another file");
    }

    TemporaryFile temporary (target);
    temporary.write (text, file);
    if (exists)
        temporary.takePermissions (status, file);
    temporary.renameTo (target);
    flushFolder (target);
}

} // namespace stopwright
