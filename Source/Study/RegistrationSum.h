// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"
#include "Study/ToneLevel.h"

#include <span>
#include <vector>

namespace stopwright
{

/// One pitch that several tones share.
struct SharedPartial
{
    double harmonic = 0.0; ///< counted from the 8 ft pitch of the first key that has it
    double frequencyHz = 0.0;
    double strongestPeakVolts = 0.0; ///< of the tones that have it
    double powerPeakVolts = 0.0;     ///< root of the sum of squares: what unlike tones would give
    double sumPeakVolts = 0.0;       ///< what they do give

    double gainDb() const noexcept; ///< sum re powerPeakVolts
};

/// Tones that sound together, added as complex amplitudes, beside what their powers would add up to.
struct RegistrationSum
{
    std::vector<ToneLevel> tones; ///< each as it is in the sum
    ToneLevel sum;
    double powerVolts = 0.0;             ///< rms
    std::vector<SharedPartial> partials; ///< pitches that two or more of them have, in ascending frequency

    double powerDbv() const noexcept;
    double gainDb() const noexcept;        ///< sum re the powers; 0 when all is silent
    double reStrongestDb() const noexcept; ///< sum re the strongest tone; 0 when all is silent
};

/// Threading: [control].
RegistrationSum addRegistration (std::span<const std::vector<RailPartial>> tones);

/// The pitches that take most away from the sum of powers, and those that add most to it; most first, at most `count`
/// of each, and none that changes by less than 0.1 dB. Threading: [control].
std::vector<SharedPartial> mostCancelled (const RegistrationSum& sum, std::size_t count);
std::vector<SharedPartial> mostReinforced (const RegistrationSum& sum, std::size_t count);

/// These stops drawn and no others, these keys held: one tone for each stop and key that is on the stop's keyboard, the
/// keys of the first stop first. Threading: [control].
std::vector<std::vector<RailPartial>>
    registrationTones (const RailStudy& study, std::span<const std::size_t> stops, std::span<const int> keys);

} // namespace stopwright
