# SPDX-License-Identifier: GPL-3.0-or-later
#
# cmake -D TREE=<a Source folder> -D TABLE=<Layers.cmake> -P CheckLayers.cmake
#
# Reads every #include of TREE and fails where a file includes from a folder that its own may not use, or a third-party
# header that is not on its folder's list. Headers of the standard library (<name>, no slash, no .h) are free to all.

cmake_minimum_required (VERSION 3.25)

include ("${TABLE}")

set (violations 0)
set (checked 0)

function (report file line reason)
    message ("${file}: ${line}: ${reason}")
    math (EXPR violations "${violations} + 1")
    set (violations ${violations} PARENT_SCOPE)
endfunction()

# Own headers: "Folder/File.h", from this folder or one the table lets it use.
function (check_own folder file header)
    cmake_path (GET header PARENT_PATH other)
    if (NOT other IN_LIST STOPWRIGHT_LAYERS)
        report ("${file}" "#include \"${header}\"" "own headers are included as \"Folder/File.h\"")
    elseif (NOT other STREQUAL folder AND NOT other IN_LIST STOPWRIGHT_USES_${folder})
        report ("${file}" "#include \"${header}\"" "${folder} may not use ${other}")
    elseif (NOT EXISTS "${TREE}/${header}")
        report ("${file}" "#include \"${header}\"" "there is no such file")
    endif()
    set (violations ${violations} PARENT_SCOPE)
endfunction()

# Headers of others: an entry of the folder's list is a whole name, or a directory when it ends in a slash.
function (check_foreign folder file header)
    if (header MATCHES "^[a-z_]+$")
        return()
    endif()
    foreach (allowed IN LISTS STOPWRIGHT_HEADERS_${folder})
        string (FIND "${header}" "${allowed}" position)
        if (header STREQUAL allowed OR (allowed MATCHES "/$" AND position EQUAL 0))
            return()
        endif()
    endforeach()
    report ("${file}" "#include <${header}>" "${folder} may not use this header")
    set (violations ${violations} PARENT_SCOPE)
endfunction()

file (GLOB_RECURSE files RELATIVE "${TREE}" "${TREE}/*.h" "${TREE}/*.cpp")

foreach (file IN LISTS files)
    string (REGEX REPLACE "/.*" "" folder "${file}")
    if (NOT folder IN_LIST STOPWRIGHT_LAYERS)
        report ("${file}" "the folder ${folder}" "is not in the table of layers")
        continue()
    endif()

    file (STRINGS "${TREE}/${file}" lines REGEX "^[ \t]*#[ \t]*(include|import)")
    foreach (line IN LISTS lines)
        math (EXPR checked "${checked} + 1")
        if (line MATCHES "include[ \t]*\"([^\"]+)\"")
            check_own (${folder} "${file}" "${CMAKE_MATCH_1}")
        elseif (line MATCHES "include[ \t]*<([^>]+)>")
            check_foreign (${folder} "${file}" "${CMAKE_MATCH_1}")
        else()
            report ("${file}" "${line}" "cannot be read")
        endif()
    endforeach()
endforeach()

if (checked EQUAL 0)
    message (FATAL_ERROR "No #include was found in ${TREE}: wrong path?")
elseif (violations GREATER 0)
    message (FATAL_ERROR "${violations} of ${checked} includes break the order of the folders (Source/Layers.cmake).")
endif()

message ("${checked} includes keep the order of the folders.")
