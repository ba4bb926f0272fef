#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# clang-tidy on every .cpp of Source/ that the build directory (the argument) has compiled. A file that passed is passed
# over until it, an own header it includes, the configuration or the compiler flags change: build/tidy holds one empty
# stamp, named by a hash of all of these, for each.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
directory=$1
stamps=$root/build/tidy
tidy=clang-tidy-14
mkdir -p "$stamps"

# What ninja knows of each object: its name, then a line per file that went into it, the source first.
list_own_files ()
{
    ninja -C "$directory" -t deps | awk -v source="$root/Source/" '
        /^[^ ].*: #deps/ { object = 1; next }
        /^$/             { if (file != "") print file; file = ""; object = 0; next }
        object           { sub (/^ +/, "")
                           if (index ($0, source) == 1)
                               file = (file == "" ? $0 : file "\t" $0) }
        END              { if (file != "") print file }' | grep "^[^	]*\.cpp" | sort -u
}

config=$({ cat "$root/.clang-tidy" "$root/CMakeLists.txt" "$root/Source/Flags.cmake"; "$tidy" --version; } | sha256sum)

list=$stamps/unchecked
: >"$list"
list_own_files | while IFS= read -r line; do
    stamp=$(printf '%s\n' "$line" | tr '\t' '\n' | { printf '%s\n' "$config"; tr '\n' '\0' | xargs -0 sha256sum; } \
            | sha256sum | cut -d ' ' -f 1)
    [ -e "$stamps/$stamp" ] || printf '%s\n%s\n' "${line%%	*}" "$stamps/$stamp" >>"$list"
done

count=$(($(wc -l <"$list") / 2))
[ "$count" -gt 0 ] || { echo "clang-tidy: nothing has changed since every file passed"; exit 0; }
echo "clang-tidy: checking $count files"

# Two at a time. xargs gives a file and its stamp to each.
tr '\n' '\0' <"$list" | xargs -0 -n 2 -P 2 sh -c '
    if report=$("$0" -p "$1" --quiet "$2" 2>&1); then : >"$3"; else printf "%s\n" "$report"; exit 1; fi
' "$tidy" "$directory"
