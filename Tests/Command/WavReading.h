// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <vector>

namespace stopwright
{

/// A WAV file as libsndfile reads it. Fails: std::runtime_error when it cannot.
struct WavReading
{
    int rateHz = 0;
    int channels = 0;
    bool isFloatWav = false;
    std::vector<double> samples;
};

WavReading readWav (const std::filesystem::path& file);

} // namespace stopwright
