// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/WavReading.h"

#include <sndfile.h>

#include <stdexcept>

namespace stopwright
{

WavReading readWav (const std::filesystem::path& file)
{
    SF_INFO info {};
    auto* const sound = sf_open (file.c_str(), SFM_READ, &info);
    if (sound == nullptr)
        throw std::runtime_error ("no WAV file: " + file.string());
    WavReading reading;
    reading.rateHz = info.samplerate;
    reading.channels = info.channels;
    reading.isFloatWav = info.format == (SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    reading.samples.resize (static_cast<std::size_t> (info.frames * info.channels));
    const auto count = sf_read_double (sound, reading.samples.data(), static_cast<sf_count_t> (reading.samples.size()));
    sf_close (sound);
    if (count != static_cast<sf_count_t> (reading.samples.size()))
        throw std::runtime_error ("a WAV file is shorter than it says: " + file.string());
    return reading;
}

} // namespace stopwright
