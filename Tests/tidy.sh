#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# clang-tidy on every .cpp of Source/ that the build directory (the argument) has compiled. A file that passed is passed
# over until it, an own header it includes, its compile command, the configuration or this script changes: build/tidy holds
# one empty stamp, named by a hash of all of these, for each.
#
# Most of the time of clang-tidy goes into the headers of the libraries, anew for each file. So the files of a folder are
# first checked in bundles: a bundle is a source that includes up to fifteen of them, none of which has a name in its
# unnamed namespace that another has there. A bundle in which anything is found proves nothing: its files are then checked
# one by one, and only what is found there counts. What clang-tidy looks for in the file itself alone, and so not in what a
# bundle includes, is names that nobody uses: of functions and constants the compiler warns, and a file with a
# using-declaration, an alias of a namespace, an inline function or a macro is checked by itself.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
directory=$(CDPATH='' cd -- "$1" && pwd -P)
stamps=$root/build/tidy
bundles=$stamps/bundles
tidy=clang-tidy-14
rm -rf "$bundles"
mkdir -p "$bundles"

# What ninja knows of each object: its name, then a line per file that went into it, the source first. A compiler cache
# may have made the paths relative.
list_own_files ()
{
    awk -v directory="$directory" -v source="$root/Source/" '
        function absolute (path)
        {
            if (path !~ /^\//)
                path = directory "/" path
            while (sub (/\/[^\/]+\/\.\.\//, "/", path)) {}
            return path
        }

        /^[^ ].*: #deps/ { object = 1; next }
        /^$/             { if (file != "") print file; file = ""; object = 0; next }
        object           { sub (/^ +/, "")
                           path = absolute ($0)
                           if (index (path, source) == 1)
                               file = (file == "" ? path : file "\t" path) }
        END              { if (file != "") print file }' "$stamps/deps" | grep "^[^	]*\.cpp" | sort -u
}

# list_unchecked : a line per file that has no stamp, FILE TAB STAMP.
list_unchecked ()
{
    config=$({ cat "$root/.clang-tidy" "$root/Tests/tidy.sh"; "$tidy" --version; } | sha256sum)
    while IFS= read -r line; do
        file=${line%%	*}
        stamp=$({ printf '%s\n' "$config"
                  grep -F -- "-c $file" "$stamps/compile_commands.json" || :
                  cat "$(dirname "$file")/.clang-tidy" 2>/dev/null || :
                  printf '%s\n' "$line" | tr '\t\n' '\0\0' | xargs -0 sha256sum; } | sha256sum | cut -d ' ' -f 1)
        [ -e "$stamps/$stamp" ] || printf '%s\t%s\n' "$file" "$stamps/$stamp"
    done <"$stamps/files"
}

# Writes each bundle of the files in unchecked as Folder/NUMBER.cpp, with its lines of unchecked in Folder/NUMBER.list.
write_bundles ()
{
    for folder in "$root"/Source/*/; do
        mkdir "$bundles/$(basename "$folder")"
        [ ! -e "$folder/.clang-tidy" ] || cp "$folder/.clang-tidy" "$bundles/$(basename "$folder")"
    done
    awk -F '\t' -v bundles="$bundles" '
        # What a line of an unnamed namespace declares, or "": the word before the first bracket, "=", ";" or " : ".
        function declared (line)
        {
            if (line !~ /^[A-Za-z]/ || line ~ /^(namespace|template|using|public:|protected:|private:)/)
                return ""
            sub (/ *(\(|\{|\[|=|;| : ).*/, "", line)
            sub (/.*[ *&:>]/, "", line)
            return line
        }

        # The names in the unnamed namespaces of a file, as the keys of names; and whether it is_alone.
        function read_names (file, names,    line, opens, unnamed, name)
        {
            delete names
            is_alone = 0
            while ((getline line <file) > 0)
            {
                if (line ~ /^#define|^inline |^ *using [A-Za-z_:]*::[A-Za-z_]*;|^ *namespace [A-Za-z_]* =/) is_alone = 1

                if (line ~ /^namespace$/) opens = 1
                else if (opens && line ~ /^\{/) { unnamed = 1; opens = 0 }
                else if (line ~ /^\} \/\/ namespace$/) unnamed = 0
                else if (unnamed && (name = declared (line)) != "") names[name] = 1
            }
            close (file)
        }

        # The first bundle of the folder that has room for the file and none of its names.
        function find_bundle (folder,    number, name, is_free)
        {
            for (number = 1; ; ++number)
            {
                is_free = count[folder, number] < (is_alone ? 1 : 15)
                for (name in names)
                    is_free = is_free && ! ((folder, number, name) in taken)
                if (is_free)
                    return number
            }
        }

        {
            folder = $1
            sub (/\/[^\/]*$/, "", folder)
            sub (/.*\//, "", folder)
            read_names ($1, names)
            number = find_bundle (folder)
            count[folder, number] += is_alone ? 15 : 1
            for (name in names)
                taken[folder, number, name] = 1
            print "#include \"" $1 "\" // NOLINT" >(bundles "/" folder "/" number ".cpp")
            print >(bundles "/" folder "/" number ".list")
        }' "$stamps/unchecked"
}

# Compile commands without precompiled headers, which are the compiler's own, and with a warning as clang calls it, in
# build/tidy.
strip_commands ()
{
    sed -e 's/ -Winvalid-pch -include [^ ]*cmake_pch\.hxx//' -e 's/-Wunused-const-variable=1/-Wunused-const-variable/' \
        "$directory/compile_commands.json" >"$stamps/compile_commands.json"
}

# Compile commands for the bundles: that of its first file for each.
write_commands ()
{
    for list in "$bundles"/*/*.list; do
        first=$(head -n 1 "$list" | cut -f 1)
        awk -v first="$first" -v bundle="${list%.list}.cpp" '
            /^\{/ { entry = ""; is_it = 0 }
            {
                rest = $0
                while ((at = index (rest, first)) > 0)
                {
                    entry = entry substr (rest, 1, at - 1) bundle
                    rest = substr (rest, at + length (first))
                    is_it = 1
                }
                entry = entry rest "\n"
            }
            /^\}/ { if (is_it) { sub (/\},?\n$/, "},", entry); print entry; exit } }' "$stamps/compile_commands.json"
    done | { echo "["; sed '$s/},$/}/'; echo "]"; } >"$bundles/compile_commands.json"
}

strip_commands
ninja -C "$directory" -t deps >"$stamps/deps"
list_own_files >"$stamps/files" || { echo "clang-tidy: $directory has compiled no file of $root/Source" >&2; exit 1; }
list_unchecked >"$stamps/unchecked"
count=$(wc -l <"$stamps/unchecked")
[ "$count" -gt 0 ] || { echo "clang-tidy: nothing has changed since every file passed"; exit 0; }
echo "clang-tidy: checking $count files"
write_bundles
write_commands

export stamps bundles tidy

# That a name hides one of another file of the bundle is no finding.
printf '%s\0' "$bundles"/*/*.list | xargs -0 -n 1 -P "$(nproc)" sh -c '
    [ "$(wc -l <"$1")" -gt 1 ] || { mv "$1" "$1.unproven"; exit; } # one file: by itself
    if "$tidy" -p "$bundles" --quiet --extra-arg=-Wno-shadow \
               --header-filter="/Source/[A-Z][A-Za-z]*/[A-Za-z0-9]*\.(h|cpp)$" "${1%.list}.cpp" >"$1.report" 2>&1; then
        cut -f 2 "$1" | tr "\n" "\0" | xargs -0 touch
    else
        mv "$1" "$1.unproven"
    fi' sh

# One by one, what no bundle has proven. xargs gives a file and its stamp to each.
for list in "$bundles"/*/*.list.unproven; do
    [ ! -e "$list" ] || tr '\t\n' '\0\0' <"$list"
done | xargs -0 -r -n 2 -P "$(nproc)" sh -c '
    if report=$("$tidy" -p "$stamps" --quiet "$1" 2>&1); then : >"$2"; else printf "%s\n" "$report"; exit 1; fi' sh
