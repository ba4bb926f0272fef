# SPDX-License-Identifier: GPL-3.0-or-later
#
# cmake -D TREES=<folder;folder...> -P CheckStyle.cmake
#
# What the formatter and the compilers do not check: every file of C++ starts with its licence, every header says
# #pragma once, and no file is longer than 300 lines, save tables of data (*Table.h, *Table.cpp).

cmake_minimum_required (VERSION 3.25)

set (longest 300)
set (faults 0)
set (checked 0)

macro (fault reason)
    message ("${file}: ${reason}")
    math (EXPR faults "${faults} + 1")
endmacro()

foreach (tree IN LISTS TREES)
    file (GLOB_RECURSE files "${tree}/*.h" "${tree}/*.cpp")
    foreach (file IN LISTS files)
        math (EXPR checked "${checked} + 1")
        file (READ "${file}" text)
        string (REGEX MATCHALL "\n" newlines "${text}")
        list (LENGTH newlines lines)

        if (NOT text MATCHES "^// SPDX-License-Identifier: GPL-3.0-or-later\n")
            fault ("the first line has to be // SPDX-License-Identifier: GPL-3.0-or-later")
        endif()
        if (file MATCHES "\\.h$" AND NOT text MATCHES "\n#pragma once\n")
            fault ("a header needs #pragma once")
        endif()
        if (lines GREATER longest AND NOT file MATCHES "Table\\.(h|cpp)$")
            fault ("${lines} lines are too many for one file, ${longest} is the most")
        endif()
    endforeach()
endforeach()

if (checked EQUAL 0)
    message (FATAL_ERROR "No file was found in ${TREES}: wrong path?")
elseif (faults GREATER 0)
    message (FATAL_ERROR "${faults} faults of style in ${checked} files.")
endif()

message ("${checked} files keep the house style.")
