// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace stopwright
{

// The hot loops of mixing. Buffers do not overlap. Threading: [audio] no allocation, no lock.

/// out += gain * in
void addScaled (float* out, const float* in, float gain, int count) noexcept;

/// out += gain * gains * in, sample by sample
void addShaped (float* out, const float* in, const float* gains, float gain, int count) noexcept;

/// out += sum of gains[s] * in[s] over `sources`
void addWeighted (float* out, const float* const* in, const float* gains, int sources, int count) noexcept;

} // namespace stopwright
