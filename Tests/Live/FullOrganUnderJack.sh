#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh Tests/Live/FullOrganUnderJack.sh BUILD_DIRECTORY [PERIOD_FRAMES [realtime|normal]]
#
# The hardest minute: the real program with every stop of the demonstration organ drawn plays 64 s of a MIDI file that holds
# all keys at its densest, under a JACK server that waits for nobody: 64 frames a period (1.33 ms), or 256 where the server
# drops out with 64 when it is alone. Counts the dropouts and reads the load, beside a minute of the same server without the
# bench, so that those of a busy machine are told apart. It needs an idle machine, takes three or four minutes and is no part
# of the normal tests. Captures, logs and pictures stay in BUILD_DIRECTORY/full-organ. Exit status 77 (skipped) when a tool
# is missing, or when the server cannot keep time even alone.
set -eu

usage="FullOrganUnderJack.sh BUILD_DIRECTORY [PERIOD_FRAMES [realtime|normal]]"
# shellcheck source=Tests/Live/live.sh
. "$(dirname -- "$0")/live.sh"
begin_live full-organ "${1:-}"
periods=${2:-64 256}
scheduling=${3:-}
[ -n "$scheduling" ] || if chrt -f 10 true 2>/dev/null; then scheduling=realtime; else scheduling=normal; fi
seconds=60
rounds=4 # of 16 s

# number NAME LOG : one number of a capture's line.
number ()
{
    awk -v name="$1" '{ for (i = 1; i < NF; ++i) if ($i == name) print $(i + 1) }' "$work/$2.log"
}

# cpu_seconds PID : processor time the process has had.
cpu_seconds ()
{
    awk -v hz="$(getconf CLK_TCK)" '{ sub(/.*\) /, ""); print ($12 + $13) / hz }' "/proc/$1/stat"
}

# machine_idle_seconds : summed over all processors.
machine_idle_seconds ()
{
    awk -v hz="$(getconf CLK_TCK)" '$1 == "cpu" { print ($5 + $6) / hz }' /proc/stat
}

# per_cent FROM TO : of the minute.
per_cent ()
{
    awk "BEGIN { printf \"%.1f\", 100 * ($2 - $1) / $seconds }"
}

# late_bench : how often the server said that the bench was not ready.
late_bench ()
{
    grep -c 'stopwright-bench was not' "$work/jackd.log" || true
}

machine ()
{
    echo "      machine: $(nproc) processors, load averages $(cut -d' ' -f1-3 /proc/loadavg)"
}

"$build/tests/stopwright-dense-midi" "$work/dense.mid" "$rounds" >"$work/dense.log"
start_display
echo "      file: $(cat "$work/dense.log")"

# --- a minute of the server without the bench
for period in $periods; do
    [ -z "${jackd_pid:-}" ] || stop_jack
    if [ "$scheduling" = realtime ]; then
        start_jack -R -P 10 -d dummy -r 48000 -p "$period"
    else
        start_jack -r -d dummy -r 48000 -p "$period"
    fi
    echo "      server: dummy, 48 kHz, $period frames a period, $scheduling scheduling, does not wait for its clients"
    machine
    idle=$(machine_idle_seconds)
    "$capture" "$work/alone.wav" "$seconds" - >"$work/alone.log"
    rm "$work/alone.wav"
    echo "      server alone: $(cat "$work/alone.log"), machine idle $(per_cent "$idle" "$(machine_idle_seconds)") % of a processor"
    alone=$(number dropouts alone)
    [ "$alone" -gt 0 ] || break
done

# --- the cautions, once, so that the music begins with the program
start_bench cautions.log "$work/Presets/LarkfieldOrgan.json"
xdotool key Return
expect "the bench is on JACK" until_true 10 sh -c 'jack_lsp | grep -q stopwright-bench:out_2'
stop_bench

# --- a minute of the full organ
machine
start_bench bench.log "$work/Presets/LarkfieldOrgan.json" --stops all --midi "$work/dense.mid"
expect "the bench is on JACK" until_true 10 sh -c 'jack_lsp | grep -q stopwright-bench:out_2'
late_before=$(late_bench)
cpu=$(cpu_seconds "$bench_pid")
idle=$(machine_idle_seconds)
"$capture" "$work/organ.wav" "$seconds" stopwright-bench >"$work/organ.log" &
capture_pid=$!
for size in 900x600 1680x1050 1200x800; do
    xdotool windowsize --sync "$window" "${size%x*}" "${size#*x}" mousemove 1679 1049
    sleep 4
    import -window "$window" "$work/playing_$size.png"
done
wait "$capture_pid"
late=$(($(late_bench) - late_before))
cpu=$(per_cent "$cpu" "$(cpu_seconds "$bench_pid")")
idle=$(per_cent "$idle" "$(machine_idle_seconds)")
echo "      full organ: $(cat "$work/organ.log"), bench late $late, bench $cpu % of a processor, machine idle $idle %"
machine

"$measure" "$work/organ.wav" 261.5 >"$work/organ.txt"
echo "      organ: $(tr '\n' ' ' <"$work/organ.txt")"
check "the whole minute was captured, frames lost" "$(number lost organ)" == 0
check "samples that are not finite" "$(reading notfinite organ)" == 0
check "under the ceiling, dBFS" "$(reading peak organ)" "<=" -1
check "sounds, dBFS" "$(reading rms organ)" ">" -40
check "highest load of the graph, %" "$(number loadmax organ)" "<" 100
dropouts=$(number dropouts organ)
if [ "$alone" -eq 0 ]; then
    check "dropouts because the bench was late" "$late" == 0
    check "dropouts in the minute" "$dropouts" == 0
else
    echo "open  dropouts: $dropouts with the bench, $alone without it; this machine cannot tell"
fi

# --- after the end
sleep $((rounds * 16 - seconds + 3))
"$capture" "$work/end.wav" 1 stopwright-bench >"$work/end.log"
"$measure" "$work/end.wav" 261.5 >"$work/end.txt"
check "silent after the end, rms dBFS" "$(reading rms end)" "<" -90
import -window "$window" "$work/end.png"
stop_bench
[ "$alone" -eq 0 ] || [ "$failures" -gt 0 ] || exit 77
finish_checks
