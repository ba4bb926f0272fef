// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace stopwright
{

/// The nominal length of a stop in feet, as an exact fraction: 8 sounds as written, 16 an octave lower, 2 2/3 a twelfth
/// higher.
///
/// Exact, since a mutation is an exact harmonic of the 8 ft pitch (2 2/3 ft is the third): 8 / feet is computed on
/// integers and rounded once. Range 1/2 .. 64 ft. A value type: copy it freely. Threading: [any] except where noted.
class Footage
{
public:
    /// The unison, 8 ft.
    Footage() noexcept = default;

    /// Reads "8", "2 2/3", "2-2/3", "1 3/5", "8/3", with or without a trailing "ft" or "'".
    ///
    /// A decimal is taken when it is a whole number of 16ths ("1.5"); "2.667" is refused, for it is no exact fraction.
    /// Threading: [control]
    /// Fails: Error with the text and what was expected.
    static Footage parse (std::string_view text);

    /// The usual way to write it: "8", "2 2/3". The inverse of parse. Threading: [control]
    std::string text() const;

    /// Pitch relative to 8 ft: 8 / feet. 8 ft gives 1, 16 ft 0.5, 2 2/3 ft exactly 3.
    double harmonicOfEightFoot() const noexcept;

    /// Whether it sounds octaves of the key: 8 / feet is a power of two.
    bool isOctave() const noexcept;

    int numerator() const noexcept { return numerator_; }

    int denominator() const noexcept { return denominator_; }

    friend bool operator== (const Footage&, const Footage&) noexcept = default;

private:
    Footage (int numerator, int denominator);

    int numerator_ = 8;
    int denominator_ = 1;
};

} // namespace stopwright
