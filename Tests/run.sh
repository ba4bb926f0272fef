#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Installs what is missing, builds, and runs every check there is: format, clang-tidy, the tests under sanitizers, and
# last the whole suite, whose own closing lines end the output. Exit status 0 only when all of it passed.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/Source/setup.sh"

failed=

# check NAME COMMAND... : goes on after a failure, so that one run shows all of them.
check ()
{
    name=$1
    shift
    say "$name"
    "$@" || failed="$failed, $name"
}

check_format ()
{
    find "$root/Source" "$root/Tests" \( -name '*.h' -o -name '*.cpp' \) -print0 \
        | xargs -0 clang-format-14 --dry-run --Werror
}

# build DIRECTORY [TARGET]
build ()
{
    say "building $1"
    cmake --build "$root/build/$1" --target "${2:-all}" || fail "the build in build/$1 failed"
}

# run_tests DIRECTORY OPTION... : ctest under a virtual display, at a fixed place in memory where that is allowed, since the
# sanitizers of the compiler cannot start under every kernel's address randomisation.
# -noreset: a display whose last window left would otherwise start anew and drop a test that connects in that moment.
run_tests ()
{
    directory=$root/build/$1
    shift
    set -- xvfb-run -a -s "-screen 0 1280x1024x24 -noreset" ctest --test-dir "$directory" "$@" \
        --parallel "$(nproc)" --output-on-failure --no-tests=error
    if setarch "$(uname -m)" -R true 2>/dev/null; then
        set -- setarch "$(uname -m)" -R "$@"
    fi
    "$@"
}

# shellcheck disable=SC2086,SC2154
install_missing $build_packages $test_packages

configure release -DCMAKE_BUILD_TYPE=Release -DSTOPWRIGHT_WITH_TESTS=ON
configure sanitize -DCMAKE_BUILD_TYPE=Debug -DSTOPWRIGHT_SANITIZE=ON
configure thread -DCMAKE_BUILD_TYPE=Debug -DSTOPWRIGHT_SANITIZE_THREAD=ON

check "format" check_format
build release
check "clang-tidy" sh "$root/Tests/tidy.sh" "$root/build/release"
build sanitize
check "tests under AddressSanitizer and UndefinedBehaviorSanitizer" run_tests sanitize
build thread stopwright-thread-tests
check "tests under ThreadSanitizer" run_tests thread --label-regex thread
check "all tests" run_tests release

[ -z "$failed" ] || fail "these checks failed: ${failed#, }"
