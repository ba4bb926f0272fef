# SPDX-License-Identifier: GPL-3.0-or-later
# shellcheck shell=sh
#
# What the live scripts share; they source it. Each sets `usage` first and then calls begin_live.
# shellcheck disable=SC2034,SC2154 # used by and set by the scripts

# begin_live FOLDER BUILD_DIRECTORY : sets build, root, bench, capture, measure and work, a fresh BUILD_DIRECTORY/FOLDER with
# a copy of the presets. Ends the script with 77 when a tool is missing.
begin_live ()
{
    [ -n "$2" ] || {
        echo "usage: $usage"
        exit 2
    }
    build=$(CDPATH='' cd -- "$2" && pwd)
    root=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
    bench=$build/bin/stopwright-bench
    capture=$build/tests/stopwright-jack-capture
    measure=$build/tests/stopwright-measure-capture

    for tool in Xvfb xdotool import jackd jack_lsp; do
        command -v "$tool" >/dev/null 2>&1 || {
            echo "skipped: $tool is not installed (packages xvfb xdotool imagemagick jackd2)"
            exit 77
        }
    done

    work=$build/$1
    rm -rf "$work"
    mkdir -p "$work/home" "$work/config" "$work/runtime"
    chmod 700 "$work/runtime"
    cp -r "$root/Presets" "$work/Presets"

    trap finish EXIT
    trap 'exit 1' INT TERM
}

started=
failures=0

# Ends what was started.
finish ()
{
    for pid in $started; do
        kill "$pid" 2>/dev/null || true
    done
    wait 2>/dev/null || true
}

# until_true SECONDS COMMAND... : waits until the command succeeds.
until_true ()
{
    tries=$(($1 * 10))
    shift
    while ! "$@" >/dev/null 2>&1; do
        tries=$((tries - 1))
        [ "$tries" -gt 0 ] || return 1
        sleep 0.1
    done
}

# check WHAT VALUE OPERATOR LIMIT
check ()
{
    if awk "BEGIN { exit ! ($2 $3 $4) }"; then
        echo "ok    $1: $2 $3 $4"
    else
        echo "FAIL  $1: $2 is not $3 $4"
        failures=$((failures + 1))
    fi
}

# expect WHAT COMMAND... : the command has to succeed.
expect ()
{
    what=$1
    shift
    if "$@" >/dev/null 2>&1; then
        echo "ok    $what"
    else
        echo "FAIL  $what"
        failures=$((failures + 1))
    fi
}

# reading NAME FILE : one number of a measurement.
reading ()
{
    awk -v name="$1" '$1 == name { print $2 }' "$work/$2.txt"
}

bench_window ()
{
    xdotool search --onlyvisible --name 'Stopwright bench' | head -n 1 | grep .
}

# start_bench LOG [WORDS...] : the bench with these words on its command line; sets bench_pid and window.
start_bench ()
{
    log=$1
    shift
    HOME=$work/home XDG_CONFIG_HOME=$work/config XDG_RUNTIME_DIR=$work/runtime "$bench" "$@" >"$work/$log" 2>&1 &
    bench_pid=$!
    started="$bench_pid $started"
    until_true 20 bench_window || {
        echo "FAIL  no window came up"
        cat "$work/$log"
        exit 1
    }
    window=$(bench_window)
    sleep 1 # until the window has put itself where it was
    xdotool windowmove "$window" 0 0 windowsize --sync "$window" 1200 800 windowfocus "$window"
    sleep 1
}

# An interrupt lets the bench close its sound device; a server that waits for its clients stalls when one just dies.
stop_bench ()
{
    kill -INT "$bench_pid"
    wait "$bench_pid" 2>/dev/null || true
}

# click "X Y" : presses a place of the window, then moves off it, so that no tooltip is in the pictures.
click ()
{
    # shellcheck disable=SC2086 # two numbers
    xdotool mousemove --window "$window" $1 sleep 0.1 click 1 sleep 0.1 mousemove 1679 1049
}

start_display ()
{
    # -noreset: without it a server whose last client left (the search for the window is one) starts anew and drops whoever
    # connects in that moment.
    Xvfb -displayfd 3 -screen 0 1680x1050x24 -nolisten tcp -noreset 3>"$work/display" >"$work/xvfb.log" 2>&1 &
    started="$! $started"
    until_true 20 test -s "$work/display"
    DISPLAY=:$(cat "$work/display")
    export DISPLAY
}

# start_jack OPTIONS... : a server of its own, with the jackd options given; sets jackd_pid.
start_jack ()
{
    JACK_DEFAULT_SERVER=stopwright-$$
    JACK_NO_AUDIO_RESERVATION=1
    JACK_NO_START_SERVER=1
    export JACK_DEFAULT_SERVER JACK_NO_AUDIO_RESERVATION JACK_NO_START_SERVER
    jackd -t 5000 -n "$JACK_DEFAULT_SERVER" "$@" >"$work/jackd.log" 2>&1 &
    jackd_pid=$!
    started="$jackd_pid $started"
    until_true 20 jack_lsp || {
        echo "FAIL  the JACK server did not start"
        cat "$work/jackd.log"
        exit 1
    }
}

stop_jack ()
{
    kill "$jackd_pid"
    wait "$jackd_pid" 2>/dev/null || true
}

# finish_checks : the last words, and the exit status of the script.
finish_checks ()
{
    echo "pictures and captures: $work"
    if [ "$failures" -gt 0 ]; then
        echo "$failures checks failed"
        exit 1
    fi
    echo "all checks passed"
}
