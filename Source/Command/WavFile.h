// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <memory>
#include <span>

namespace stopwright
{

/// A mono WAV file of 32-bit floats that appears whole or not at all: it is written beside its place under a name of its
/// own and renamed by keep(). Equal samples give equal bytes. Threading: [control].
/// Fails: Error with a sentence (no such folder, not writable, disc full); what was there before stays.
class WavFile
{
public:
    WavFile (const std::filesystem::path& file, int rateHz);

    /// Removes what was written unless it was kept.
    ~WavFile();

    WavFile (const WavFile&) = delete;
    WavFile& operator= (const WavFile&) = delete;
    WavFile (WavFile&&) = delete;
    WavFile& operator= (WavFile&&) = delete;

    void write (std::span<const float> samples);

    /// Flushes to the disc and puts the file in its place.
    void keep();

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
