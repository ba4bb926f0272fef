#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes DemonstrationPhrase.mid: a short original phrase that shows a stop over its compass.

Single notes an octave apart, a scale, two voices, four chords, then the lowest and the highest keys together. It is
played on the keys of an organ, so every note has the same velocity. Run it from any directory; the standard library is
all it needs. The output is the same to the last byte on every machine.
"""

from pathlib import Path

TICKS_PER_BEAT = 480
BEATS_PER_MINUTE = 120
STEPS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}


def key_number(name):
    """C4 is 60; a sharp is written F#3, a flat Bb3."""
    accidental = name.count("#") - name[1:].count("b")
    return 12 * (int(name[-1]) + 1) + STEPS[name[0]] + accidental


def single_notes():
    """Each C of the manual by itself: the formant stands still, the partials under it change."""
    return [(beat, 0.9, name) for beat, name in enumerate(["C2", "C3", "C4", "C5", "C6"])]


def scale(start):
    """An eighth-note run of a Dorian scale, up and half-way down."""
    names = "D4 E4 F4 G4 A4 B4 C5 D5 C5 A4 F4 E4".split()
    return [(start + index / 2, 0.46, name) for index, name in enumerate(names)]


def two_voices(start):
    """A short upper line against a bass in longer notes."""
    upper = [("D4", 1), ("A4", 0.5), ("G4", 0.5), ("F4", 0.5), ("G4", 0.5), ("E4", 1), ("F4", 0.5), ("D4", 0.5), ("C#4", 1)]
    lower = [("D3", 2), ("Bb2", 1), ("C3", 1), ("G2", 1), ("A2", 1)]
    return line(start, upper) + line(start, lower)


def line(start, notes):
    """One voice, slightly detached."""
    placed = []
    for name, beats in notes:
        placed.append((start, beats * 0.94, name))
        start += beats
    return placed


def chords(start):
    """Four chords, the last one ten keys wide."""
    pillars = ["D3 A3 D4 F4", "G2 B3 D4 G4", "C3 G3 C4 E4", "F2 C3 F3 A3 C4 F4 A4 C5 E5 G5"]
    lengths = [1, 1, 1, 2]
    placed = []
    for names, beats in zip(pillars, lengths):
        placed += [(start, beats * 0.94, name) for name in names.split()]
        start += beats
    return placed


def phrase():
    """All notes as (start in beats, length in beats, key name)."""
    ends = [(28, 1.5, name) for name in ("D2", "A2", "D6", "A6")]
    return single_notes() + scale(5) + two_voices(11) + chords(17.5) + line(23, climb()) + ends


def climb():
    """From the low keys to the high ones in leaps."""
    return [(name, 0.5) for name in "D2 A2 D3 F3 A3 D4 F4 A4 D5 A5".split()]


def variable_length(value):
    """A delta time as the Standard MIDI File format stores it: seven bits to a byte, the top bit set on all but the last."""
    groups = [value & 0x7F]
    while value := value >> 7:
        groups.append(0x80 | (value & 0x7F))
    return bytes(reversed(groups))


def track(notes):
    """One track: the tempo, the notes in time order (a release before a key that goes down at the same tick), the end."""
    events = []
    for start, length, name in notes:
        key = key_number(name)
        events.append((round(start * TICKS_PER_BEAT), 1, bytes([0x90, key, 100])))
        events.append((round((start + length) * TICKS_PER_BEAT), 0, bytes([0x80, key, 64])))

    microseconds = round(60_000_000 / BEATS_PER_MINUTE)
    data = b"\x00\xff\x51\x03" + microseconds.to_bytes(3, "big")
    now = 0
    for tick, _, message in sorted(events):
        data += variable_length(tick - now) + message
        now = tick
    return data + b"\x00\xff\x2f\x00"


def main():
    body = track(phrase())
    header = b"MThd" + (6).to_bytes(4, "big") + b"".join(part.to_bytes(2, "big") for part in (0, 1, TICKS_PER_BEAT))
    target = Path(__file__).with_name("DemonstrationPhrase.mid")
    target.write_bytes(header + b"MTrk" + len(body).to_bytes(4, "big") + body)
    seconds = max(start + length for start, length, _ in phrase()) * 60 / BEATS_PER_MINUTE
    print(f"{target.name}: {len(phrase())} notes, {seconds:.1f} s")


if __name__ == "__main__":
    main()
