# SPDX-License-Identifier: GPL-3.0-or-later
# shellcheck shell=sh
#
# Sourced by Source/run.sh and Tests/run.sh: what the project needs from Debian 12, and the build directory.
# Expects $root, the path of the project.

build_packages="
g++
cmake
ninja-build
pkg-config
libeigen3-dev
nlohmann-json3-dev
libsndfile1-dev
libfftw3-dev
libcli11-dev
juce-modules-source
juce-tools
libasound2-dev
libjack-jackd2-dev
libfreetype-dev
libx11-dev
libxext-dev
libxrandr-dev
libxinerama-dev
libxcursor-dev
libxcomposite-dev
fonts-dejavu-core
"

test_packages="
libgtest-dev
libbenchmark-dev
libvalijson-dev
clang-format-14
clang-tidy-14
xvfb
xauth
xdotool
imagemagick
jackd2
"

say ()
{
    printf '%s\n' "stopwright: $*"
}

fail ()
{
    printf '%s\n' "stopwright: $*" >&2
    exit 1
}

is_installed ()
{
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

# install_missing PACKAGE... : installs those that are not there, and says so first. Does nothing when all are there.
install_missing ()
{
    command -v dpkg-query >/dev/null 2>&1 \
        || fail "this set-up is for Debian 12; elsewhere install the like of:" "$@"

    missing=
    for package in "$@"; do
        is_installed "$package" || missing="$missing $package"
    done
    [ -n "$missing" ] || return 0

    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null 2>&1 \
            || fail "packages are missing and there is no sudo; as root, run: apt-get install$missing"
        as_root=sudo
    fi

    say "installing these Debian packages and what they depend on:$missing"
    $as_root apt-get update -q || fail "the package lists could not be fetched: is there a network?"
    # $missing is a list on purpose.
    # shellcheck disable=SC2086
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing \
        || fail "apt-get could not install:$missing"
}

# configure DIRECTORY OPTION... : makes or refreshes a build directory under build/. Quiet unless it fails.
configure ()
{
    directory=$root/build/$1
    shift
    mkdir -p "$directory"
    cmake -S "$root" -B "$directory" -G Ninja "$@" >"$directory/configure.log" 2>&1 \
        || { cat "$directory/configure.log" >&2; fail "the build could not be configured"; }
}
