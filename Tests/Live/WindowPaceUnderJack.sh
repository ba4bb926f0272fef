#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh Tests/Live/WindowPaceUnderJack.sh BUILD_DIRECTORY [PERIOD_FRAMES]
#
# How fast the window is while it is hardest: every stop of the demonstration organ drawn, a MIDI file that holds all keys
# at its densest, a JACK server that waits for nobody with 256 frames a period, and a hand that turns parts sixty times a
# second. Checks that the window paints sixty frames a second, that a reading moves with nearly every event, that the window
# answers within 50 ms, and that the audio thread keeps its deadline; dropouts are printed. It needs an idle machine, takes about two minutes and is no part of the normal tests.
# Logs and pictures stay in BUILD_DIRECTORY/window-pace. Exit status 77 (skipped) when a tool is missing.
set -eu

usage="WindowPaceUnderJack.sh BUILD_DIRECTORY [PERIOD_FRAMES]"
# shellcheck source=Tests/Live/live.sh
. "$(dirname -- "$0")/live.sh"
begin_live window-pace "${1:-}"
seconds=10
"$build/tests/stopwright-dense-midi" "$work/dense.mid" 10 >"$work/dense.log"
start_display
period=${2:-256}
if chrt -f 10 true 2>/dev/null; then
    scheduling=realtime
    start_jack -R -P 10 -d dummy -r 48000 -p "$period"
else
    scheduling=normal
    start_jack -r -d dummy -r 48000 -p "$period"
fi
echo "      server: dummy, 48 kHz, $period frames a period, $scheduling scheduling, does not wait for its clients"

HOME=$work/home XDG_CONFIG_HOME=$work/config XDG_RUNTIME_DIR=$work/runtime \
    "$build/tests/stopwright-window-pace" "$work/Presets/LarkfieldOrgan.json" "$work/dense.mid" "$work" "$seconds" \
    >"$work/pace.log" 2>"$work/errors.log" || {
    cat "$work/errors.log"
    exit 1
}
echo "      machine: $(nproc) processors, load averages $(cut -d' ' -f1-3 /proc/loadavg)"
while read -r name _ fps _ longest _ events _ median _ late _ worst _ readings _ load _ status; do
    echo "      $name: $events events, answered after $median ms (median), $late ms (99 of 100), $worst ms (worst); longest between frames $longest ms; $readings readings a second; $status"
    check "$name: frames a second" "$fps" ">=" 57
    check "$name: 99 of 100 answers, ms" "$late" "<" 50
    [ "$name" != turning-a-part ] || check "$name: readings a second" "$readings" ">=" 50
    check "$name: highest load of the audio thread, %" "$load" "<" 100
done <"$work/pace.log"
finish_checks
