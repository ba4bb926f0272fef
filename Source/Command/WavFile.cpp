// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/WavFile.h"

#include "Units/Error.h"

#include <fcntl.h>
#include <sndfile.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

namespace stopwright
{

namespace
{

[[noreturn]] void refuse (const std::filesystem::path& file, const std::string& what, int error)
{
    const auto reason = error == 0 ? std::string() : " (" + std::generic_category().message (error) + ")";
    throw Error (file.string() + ": " + what + reason + ".");
}

/// A symbolic link stays and its target is replaced; only a regular file may be.
std::filesystem::path targetOf (const std::filesystem::path& file)
{
    std::error_code fault;
    const auto status = std::filesystem::status (file, fault);
    if (std::filesystem::is_directory (status))
        refuse (file, "this is a directory; name a file to write", 0);
    if (std::filesystem::exists (status) && ! std::filesystem::is_regular_file (status))
        refuse (file, "this is no regular file; name a file to write", 0);
    const auto target = std::filesystem::exists (status) ? std::filesystem::canonical (file, fault) : file;
    return fault ? file : target;
}

} // namespace

struct WavFile::Implementation
{
    Implementation (const std::filesystem::path& file, int rateHz) : wanted (file), target (targetOf (file))
    {
        openTemporary();
        SF_INFO info {};
        info.samplerate = rateHz;
        info.channels = 1;
        info.format = SF_FORMAT_WAV | SF_FORMAT_FLOAT;
        sound = sf_open_fd (descriptor, SFM_WRITE, &info, SF_FALSE);
        if (sound == nullptr)
        {
            discard();
            refuse (wanted, "the WAV file cannot be begun", 0);
        }
        // The peak chunk holds the time of day, which would make equal renderings differ.
        sf_command (sound, SFC_SET_ADD_PEAK_CHUNK, nullptr, SF_FALSE);
    }

    ~Implementation() { discard(); }

    Implementation (const Implementation&) = delete;
    Implementation& operator= (const Implementation&) = delete;
    Implementation (Implementation&&) = delete;
    Implementation& operator= (Implementation&&) = delete;

    void openTemporary()
    {
        constexpr int attempts = 100;
        for (int i = 0; i < attempts && descriptor < 0; ++i)
        {
            temporary = target.parent_path()
                        / (".stopwright-" + std::to_string (::getpid()) + "-" + std::to_string (i) + ".wav");
            descriptor = ::open (temporary.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            if (descriptor < 0 && errno != EEXIST)
                break;
        }
        if (descriptor < 0)
        {
            temporary.clear();
            refuse (wanted, "no file can be written in this folder", errno);
        }
    }

    void discard() noexcept
    {
        if (sound != nullptr)
            sf_close (sound);
        sound = nullptr;
        if (descriptor >= 0)
            ::close (descriptor);
        descriptor = -1;
        if (! temporary.empty())
            ::unlink (temporary.c_str());
    }

    std::filesystem::path wanted;
    std::filesystem::path target;
    std::filesystem::path temporary; ///< empty once renamed
    int descriptor = -1;
    SNDFILE* sound = nullptr;
};

WavFile::WavFile (const std::filesystem::path& file, int rateHz)
    : implementation_ (std::make_unique<Implementation> (file, rateHz))
{}

WavFile::~WavFile() = default;

void WavFile::write (std::span<const float> samples)
{
    errno = 0;
    const auto count = static_cast<sf_count_t> (samples.size());
    if (sf_writef_float (implementation_->sound, samples.data(), count) != count)
        refuse (implementation_->wanted, "the sound cannot be written", errno);
}

void WavFile::keep()
{
    auto& self = *implementation_;
    errno = 0;
    const int closed = sf_close (self.sound);
    self.sound = nullptr;
    if (closed != 0 || ::fsync (self.descriptor) != 0)
        refuse (self.wanted, "the sound cannot be written", errno);
    const int closedDescriptor = ::close (self.descriptor);
    self.descriptor = -1;
    if (closedDescriptor != 0 || ::rename (self.temporary.c_str(), self.target.c_str()) != 0)
        refuse (self.wanted, "the sound cannot be put in its place", errno);
    self.temporary.clear();
}

} // namespace stopwright
