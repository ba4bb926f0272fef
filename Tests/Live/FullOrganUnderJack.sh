#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh Tests/Live/FullOrganUnderJack.sh BUILD_DIRECTORY [PERIOD_FRAMES [realtime|normal]]
#
# The hardest minute: the real program with every stop of the demonstration organ drawn plays 64 s of a MIDI file that holds
# all keys at its densest, under a JACK server that waits for nobody: with 64 frames a period (1.33 ms), and where that has
# dropouts, with 256. Counts them and reads the load, beside a minute of the same server without the bench and, after
# dropouts, one with a client that only spins: what that one is late for is the machine's doing. Fails when the bench drops
# out with the last period though the server alone does not. It needs an idle machine, takes three to seven minutes and is
# no part of the normal tests. Captures, logs and pictures stay in BUILD_DIRECTORY/full-organ. Exit status 77 (skipped) when
# a tool is missing, or when the server cannot keep time even alone.
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

# start_server : without -S, so that it waits for nobody.
start_server ()
{
    if [ "$scheduling" = realtime ]; then
        start_jack -R -P 10 -d dummy -r 48000 -p "$period"
    else
        start_jack -r -d dummy -r 48000 -p "$period"
    fi
    echo "      server: dummy, 48 kHz, $period frames a period, $scheduling scheduling, does not wait for its clients"
}

# minute_without_bench NAME WHAT [SPIN]
minute_without_bench ()
{
    name=$1
    what=$2
    shift 2
    machine
    idle=$(machine_idle_seconds)
    "$capture" "$work/$name.wav" "$seconds" - "$@" >"$work/$name.log"
    rm "$work/$name.wav"
    echo "      $what: $(cat "$work/$name.log"), machine idle $(per_cent "$idle" "$(machine_idle_seconds)") % of a processor"
}

# The first time the cautions come before the sound, so that the music would not begin with the program.
acknowledge_cautions ()
{
    start_bench cautions.log "$work/Presets/LarkfieldOrgan.json"
    xdotool key Return
    expect "the bench is on JACK" until_true 10 sh -c 'jack_lsp | grep -q stopwright-bench:out_2'
    stop_bench
    cautions="read"
}

# minute_of_full_organ : leaves the bench running.
minute_of_full_organ ()
{
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
}

check_organ ()
{
    "$measure" "$work/organ.wav" 261.5 >"$work/organ.txt"
    echo "      organ: $(tr '\n' ' ' <"$work/organ.txt")"
    check "the whole minute was captured, frames lost" "$(number lost organ)" == 0
    check "samples that are not finite" "$(reading notfinite organ)" == 0
    check "under the ceiling, dBFS" "$(reading peak organ)" "<=" -1
    check "sounds, dBFS" "$(reading rms organ)" ">" -40
    check "highest load of the graph, %" "$(number loadmax organ)" "<" 100
}

check_end ()
{
    sleep $((rounds * 16 - seconds + 3))
    "$capture" "$work/end.wav" 1 stopwright-bench >"$work/end.log"
    "$measure" "$work/end.wav" 261.5 >"$work/end.txt"
    check "silent after the end, rms dBFS" "$(reading rms end)" "<" -90
    import -window "$window" "$work/end.png"
    stop_bench
}

"$build/tests/stopwright-dense-midi" "$work/dense.mid" "$rounds" >"$work/dense.log"
start_display
echo "      file: $(cat "$work/dense.log")"
cautions=unread
for period in $periods; do
    [ -z "${jackd_pid:-}" ] || stop_jack
    start_server
    minute_without_bench alone "server alone"
    [ "$cautions" = read ] || acknowledge_cautions
    minute_of_full_organ
    check_organ
    check_end
    alone=$(number dropouts alone)
    dropouts=$(number dropouts organ)
    [ "$dropouts" -gt 0 ] || break
    minute_without_bench spin "client that only spins for 0.3 of a period" 0.3
    echo "note  with $period frames $dropouts dropouts, for $late of which the bench was late; $alone without it, $(number dropouts spin) with a client that only spins"
done

if [ "$dropouts" -gt 0 ] && [ "$alone" -gt 0 ]; then
    [ "$failures" -gt 0 ] || {
        echo "skipped: the server drops out alone; this machine cannot tell"
        exit 77
    }
else
    check "dropouts in the minute with $period frames a period" "$dropouts" == 0
fi
finish_checks
