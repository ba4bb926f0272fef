#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds, and opens the bench on the demonstration organ. Without a display it renders the
# demonstration phrase through the proposed stop to a WAV file and prints the stop's harmonics.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/Source/setup.sh"

bin=$root/build/release/bin
stop=$root/Presets/Krummhorn8.json
organ=$root/Presets/LarkfieldOrgan.json
wav=$root/build/DemonstrationPhrase.wav

# Whether an X server answers to $DISPLAY, as far as can be told without asking it: a local one has a socket.
has_display ()
{
    case ${DISPLAY:-} in
        '') return 1 ;;
        :*) number=${DISPLAY#:}
            [ -S "/tmp/.X11-unix/X${number%%.*}" ] ;;
        *) return 0 ;;
    esac
}

# shellcheck disable=SC2086,SC2154
install_missing $build_packages

# A tree that Tests/run.sh has configured keeps its tests; a fresh one is built without, for they need more packages.
if [ -f "$root/build/release/CMakeCache.txt" ]; then
    configure release
else
    configure release -DCMAKE_BUILD_TYPE=Release -DSTOPWRIGHT_WITH_TESTS=OFF
fi

say "building (the first time takes some minutes)"
cmake --build "$root/build/release" --target stopwright stopwright-bench

if has_display; then
    say "opening the bench on the demonstration organ"
    exec "$bin/stopwright-bench" "$organ"
fi

say "there is no display (DISPLAY is not set or no X server is there), so the phrase is rendered to a file"
"$bin/stopwright" render "$stop" --instrument "$organ" --midi "$root/Presets/DemonstrationPhrase.mid" --out "$wav" \
    --scale listening
say "harmonics of $stop at C4:"
"$bin/stopwright" harmonics "$stop" --key C4 --instrument "$organ"
say "the demonstration phrase is in $wav, at the level the bench starts at; set your player low before you listen"
