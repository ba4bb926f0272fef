# SPDX-License-Identifier: GPL-3.0-or-later
#
# The few functions that the CMakeLists.txt of the folders call.
#
#   stopwright_library (<Folder> FILES <files...>)
#       The static library stopwright_<folder>, linked as Layers.cmake says. DEPENDS <folders...> narrows the own
#       libraries it is linked to; without it, all that the table allows.
#
#   stopwright_program (<Folder> NAME <program> FILES <files...>)
#       A program in <build>/bin, linked to the library of its folder.
#
#   stopwright_test (<Folder> [SUITE <name>] [LABELS <labels...>] [LINKS <targets...>] [PRECOMPILE <headers...>]
#                    FILES <files...>)
#       The GoogleTest program stopwright_<folder>[_<suite>]_tests, each of its tests registered with CTest. It is
#       linked to the library of its folder (where there is one), to stopwright_test_support, and to LINKS. Labels with
#       a meaning: "thread" is repeated under ThreadSanitizer, "gui" needs a display. PRECOMPILE names what nearly all
#       of its files include, beside GoogleTest's own header.
#
# Include paths start at Source/ ("Circuit/Netlist.h") and, for tests, also at Tests/ ("Support/Tolerances.h"). In the
# tests STOPWRIGHT_ROOT is the path of the project as a string literal, for Presets/ and Assets/.

# A file that is listed but absent stops the build of its own target and not the configuration of all the others.
function (stopwright_expect_files)
    foreach (file IN LISTS ARGN)
        cmake_path (ABSOLUTE_PATH file)
        if (NOT EXISTS "${file}")
            message (WARNING "${file} is listed but does not exist.")
            set_source_files_properties ("${file}" PROPERTIES GENERATED TRUE)
        endif()
    endforeach()
endfunction()

function (stopwright_require caller folder)
    if (NOT folder IN_LIST STOPWRIGHT_LAYERS)
        message (FATAL_ERROR "${caller}: ${folder} is not in Source/Layers.cmake.")
    endif()
endfunction()

function (stopwright_library folder)
    cmake_parse_arguments (PARSE_ARGV 1 ARG "" "" "DEPENDS;FILES")
    stopwright_require (stopwright_library ${folder})
    stopwright_expect_files (${ARG_FILES})
    string (TOLOWER "stopwright_${folder}" target)

    add_library (${target} STATIC ${ARG_FILES})
    target_include_directories (${target} PUBLIC "${PROJECT_SOURCE_DIR}/Source")
    target_link_libraries (${target} PRIVATE stopwright_flags ${STOPWRIGHT_LINKS_${folder}})

    if (NOT DEFINED ARG_DEPENDS)
        foreach (used IN LISTS STOPWRIGHT_USES_${folder})
            if (EXISTS "${PROJECT_SOURCE_DIR}/Source/${used}/CMakeLists.txt")
                list (APPEND ARG_DEPENDS ${used})
            endif()
        endforeach()
    endif()

    foreach (used IN LISTS ARG_DEPENDS)
        if (NOT used IN_LIST STOPWRIGHT_USES_${folder})
            message (FATAL_ERROR "${folder} may not depend on ${used}: see Source/Layers.cmake.")
        endif()
        string (TOLOWER "stopwright_${used}" usedTarget)
        target_link_libraries (${target} PUBLIC ${usedTarget})
    endforeach()

    # Eigen types stand in public headers, so whoever includes those needs its path too.
    if ("Eigen3::Eigen" IN_LIST STOPWRIGHT_LINKS_${folder})
        target_link_libraries (${target} PUBLIC Eigen3::Eigen)
    endif()
endfunction()

function (stopwright_program folder)
    cmake_parse_arguments (PARSE_ARGV 1 ARG "" "NAME" "FILES")
    stopwright_require (stopwright_program ${folder})
    stopwright_expect_files (${ARG_FILES})
    string (TOLOWER "stopwright_${folder}" library)

    add_executable (${ARG_NAME} ${ARG_FILES})
    target_link_libraries (${ARG_NAME} PRIVATE stopwright_flags ${library} ${STOPWRIGHT_LINKS_${folder}})
endfunction()

# What is tested is built for speed; the tests themselves need not be, and compile in half the time. GCC 12 warns of
# overflows in joined strings that cannot happen (its bug 105651), so these two warnings are off in tests.
set (STOPWRIGHT_TEST_OPTIMISATION $<$<CONFIG:Release>:-O1>
                                  $<$<CXX_COMPILER_ID:GNU>:-Wno-array-bounds$<SEMICOLON>-Wno-stringop-overflow>)

function (stopwright_test folder)
    cmake_parse_arguments (PARSE_ARGV 1 ARG "" "SUITE" "LABELS;LINKS;PRECOMPILE;FILES")
    stopwright_expect_files (${ARG_FILES})
    string (TOLOWER "stopwright_${folder}" library)
    string (TOLOWER "stopwright_${folder}_${ARG_SUITE}_tests" target)
    string (REPLACE "__" "_" target "${target}")

    add_executable (${target} ${ARG_FILES})
    target_link_libraries (${target} PRIVATE stopwright_flags ${ARG_LINKS} stopwright_test_support GTest::gtest_main)
    if (folder IN_LIST STOPWRIGHT_LAYERS)
        target_link_libraries (${target} PRIVATE ${library})
    endif()
    if (ARG_PRECOMPILE)
        target_precompile_headers (${target} PRIVATE <gtest/gtest.h> ${ARG_PRECOMPILE})
    else()
        target_precompile_headers (${target} REUSE_FROM stopwright_test_header)
    endif()
    target_compile_options (${target} PRIVATE ${STOPWRIGHT_TEST_OPTIMISATION})
    target_compile_definitions (${target} PRIVATE "STOPWRIGHT_ROOT=\"${PROJECT_SOURCE_DIR}\"")
    set_target_properties (${target} PROPERTIES RUNTIME_OUTPUT_DIRECTORY "${CMAKE_BINARY_DIR}/tests")

    if ("thread" IN_LIST ARG_LABELS)
        add_dependencies (stopwright-thread-tests ${target})
    endif()

    # One label, for gtest_discover_tests takes a list apart: "Sound-thread" answers to ctest -L Sound and -L thread.
    list (JOIN ARG_LABELS "-" labels)
    if (labels)
        string (PREPEND labels "-")
    endif()
    # Two windows at once would take the keyboard from each other.
    set (lock)
    if ("gui" IN_LIST ARG_LABELS)
        set (lock RESOURCE_LOCK display)
    endif()
    gtest_discover_tests (${target} DISCOVERY_MODE PRE_TEST WORKING_DIRECTORY "${CMAKE_BINARY_DIR}"
                          PROPERTIES LABELS "${folder}${labels}" TIMEOUT 600 ${lock})
endfunction()
