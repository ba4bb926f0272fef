# SPDX-License-Identifier: GPL-3.0-or-later
#
# What Debian packages bring. Found here, at the top level, so that every folder sees the targets.

find_package (PkgConfig REQUIRED)
find_package (Eigen3 3.4 REQUIRED NO_MODULE)
find_package (nlohmann_json 3.11 REQUIRED)
find_package (CLI11 2.1 REQUIRED)
find_package (JUCE 7.0.5 CONFIG REQUIRED) # the package refuses a plain "7"
pkg_check_modules (sndfile REQUIRED IMPORTED_TARGET sndfile)
pkg_check_modules (fftw3 REQUIRED IMPORTED_TARGET fftw3)

if (STOPWRIGHT_WITH_TESTS)
    find_package (GTest CONFIG REQUIRED)
    find_package (benchmark REQUIRED)
    find_path (STOPWRIGHT_VALIJSON_INCLUDE valijson/validator.hpp REQUIRED)
endif()
