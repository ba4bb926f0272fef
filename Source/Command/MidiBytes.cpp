// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MidiBytes.h"

#include "Organ/DocumentError.h"

#include <utility>

namespace stopwright
{

MidiBytes::MidiBytes (std::string_view bytes, std::string origin, std::size_t firstByte)
    : bytes_ (bytes),
      origin_ (std::move (origin)),
      firstByte_ (firstByte)
{}

int MidiBytes::peek()
{
    if (atEnd())
        refuse ("the MIDI file ends in the middle of something; it was probably cut off.");
    return static_cast<unsigned char> (bytes_[position_]);
}

int MidiBytes::byte()
{
    const int value = peek();
    ++position_;
    return value;
}

int MidiBytes::dataByte()
{
    constexpr int statusBit = 0x80;
    const int value = byte();
    if ((value & statusBit) != 0)
        refuse ("a MIDI message is cut short by the next one; the file is damaged.");
    return value;
}

std::uint32_t MidiBytes::number (int count)
{
    std::uint32_t value = 0;
    for (int i = 0; i < count; ++i)
        value = (value << 8U) | static_cast<std::uint32_t> (byte());
    return value;
}

std::uint32_t MidiBytes::variableLength()
{
    constexpr int mostBytes = 4;
    constexpr std::uint32_t moreBit = 0x80;
    std::uint32_t value = 0;
    for (int i = 0; i < mostBytes; ++i)
    {
        const auto next = static_cast<std::uint32_t> (byte());
        value = (value << 7U) | (next & ~moreBit);
        if ((next & moreBit) == 0)
            return value;
    }
    refuse ("a time or length takes more than four bytes; the file is damaged.");
}

std::string_view MidiBytes::take (std::size_t count)
{
    if (count > remaining())
        refuse ("a length points beyond the end of its track or file; the MIDI file is damaged or cut off.");
    const auto taken = bytes_.substr (position_, count);
    position_ += count;
    return taken;
}

MidiBytes MidiBytes::part (std::size_t count)
{
    const auto start = firstByte_ + position_;
    return { take (count), origin_, start };
}

void MidiBytes::refuse (const std::string& sentence) const
{
    throw DocumentError (origin_, "byte " + std::to_string (firstByte_ + position_), sentence);
}

} // namespace stopwright
