// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace stopwright
{

/// Reads the bytes of a standard MIDI file from front to back and never past the end. Threading: [control].
/// Fails: every read throws DocumentError when the bytes run out or say something illegal.
class MidiBytes
{
public:
    /// `firstByte` is where these bytes lie in the file, for sentences.
    MidiBytes (std::string_view bytes, std::string origin, std::size_t firstByte = 0);

    bool atEnd() const noexcept { return position_ == bytes_.size(); }

    std::size_t remaining() const noexcept { return bytes_.size() - position_; }

    /// The next byte, which stays.
    int peek();

    int byte();

    /// A byte whose highest bit is clear.
    int dataByte();

    /// Big-endian, of `count` bytes (1 .. 4).
    std::uint32_t number (int count);

    /// A variable-length quantity of at most four bytes.
    std::uint32_t variableLength();

    std::string_view take (std::size_t count);

    /// The next `count` bytes as a reader of their own.
    MidiBytes part (std::size_t count);

    [[noreturn]] void refuse (const std::string& sentence) const;

private:
    std::string_view bytes_;
    std::string origin_;
    std::size_t firstByte_ = 0;
    std::size_t position_ = 0;
};

} // namespace stopwright
