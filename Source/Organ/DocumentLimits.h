// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>

namespace stopwright
{

/// How much a document may hold. Documents come from anywhere, so what they can cost is bounded before they are read;
/// no organ comes near these.
struct DocumentLimits
{
    static constexpr std::size_t bytes = std::size_t { 4 } << 20;
    static constexpr std::size_t depth = 64;
    static constexpr std::size_t values = 50000; ///< of any type, in the whole document
    static constexpr std::size_t fieldsPerObject = 256;
    static constexpr std::size_t nameCharacters = 64;     ///< of a part, node, tap ...
    static constexpr std::size_t titleCharacters = 200;   ///< of a card or instrument
    static constexpr std::size_t quantityCharacters = 32; ///< "47 kohm"
    static constexpr std::size_t divisions = 16;
    static constexpr std::size_t keyedBuses = 64;
    static constexpr std::size_t mixingBuses = 32; ///< and so preamps
    static constexpr std::size_t stagesPerPreamp = 16;
    static constexpr std::size_t outlets = 16;
    static constexpr std::size_t couplers = 64;
    static constexpr std::size_t stops = 512;
    static constexpr std::size_t pathCharacters = 1024;   ///< of a card's file
    static constexpr std::size_t maskEntries = 512;       ///< harmonics of a mask, and bands
    static constexpr std::size_t sourceCharacters = 1000; ///< who says what a mask wants
    static constexpr std::size_t whyCharacters = 1000;    ///< why something was altered
};

} // namespace stopwright
