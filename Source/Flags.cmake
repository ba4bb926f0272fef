# SPDX-License-Identifier: GPL-3.0-or-later
#
# stopwright_flags: what own code is compiled with. Libraries of others never see these.

add_library (stopwright_flags INTERFACE)

# Nobody here reads errno after a maths call or the floating-point exception flags. Promising that lets the compiler
# inline sqrt and vectorise loops with comparisons. Neither changes a value: infinities, NaN, signed zeros and the order
# of every sum stay as written, which is why -Ofast and -ffast-math are out.
target_compile_options (stopwright_flags INTERFACE -fno-math-errno -fno-trapping-math)

set (CMAKE_CXX_FLAGS_RELEASE "-O3 -DNDEBUG")
set (CMAKE_CXX_FLAGS_DEBUG "-g")

if (STOPWRIGHT_SANITIZE AND STOPWRIGHT_SANITIZE_THREAD)
    message (FATAL_ERROR "STOPWRIGHT_SANITIZE and STOPWRIGHT_SANITIZE_THREAD exclude each other: use two build directories.")
endif()

# Left out of the undefined-behaviour checks are null (AddressSanitizer stops at the access itself), alignment (so does
# the processor, at a vector load) and vptr (nothing here is cast down a hierarchy): put at every member access, they
# treble the time of compiling.
if (STOPWRIGHT_SANITIZE)
    set (stopwright_sanitizers -fsanitize=address,undefined -fno-sanitize=null,vptr,alignment
                               -fno-sanitize-recover=all -fno-omit-frame-pointer)
elseif (STOPWRIGHT_SANITIZE_THREAD)
    set (stopwright_sanitizers -fsanitize=thread -fno-omit-frame-pointer)
    set (STOPWRIGHT_WITH_BENCH OFF)
endif()

if (stopwright_sanitizers)
    # Between its checks GCC sees paths that do not exist, and warns of them. Warnings are the plain build's affair.
    target_compile_options (stopwright_flags INTERFACE -w)
    target_compile_options (stopwright_flags INTERFACE ${stopwright_sanitizers} -g1 -O1)
    target_link_options (stopwright_flags INTERFACE ${stopwright_sanitizers})

    # STOPWRIGHT_SANITIZED turns off what does not live together with a sanitizer: the wide-vector clones (their
    # resolvers run before the sanitizer is set up) and the allocation guard (both replace malloc).
    target_compile_definitions (stopwright_flags INTERFACE STOPWRIGHT_SANITIZED=1 _GLIBCXX_ASSERTIONS=1)
else()
    target_compile_options (stopwright_flags INTERFACE
        -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wunused-const-variable=1 -Werror)
endif()
