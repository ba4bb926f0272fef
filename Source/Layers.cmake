# SPDX-License-Identifier: GPL-3.0-or-later
#
# Which folder of Source/ may use what. This table is the only place where it is written down: Targets.cmake links by
# it, and the test Tests/Layers reads it to judge every #include line.
#
#   stopwright_layer (<Folder> USES <folders it may include from>
#                              HEADERS <third-party headers, exact or ending in / for a whole directory>
#                              LINKS <third-party targets it is linked to>)
#
# The order is the order of the house: a folder may name only folders above it.

set (STOPWRIGHT_LAYERS "")

macro (stopwright_layer folder)
    cmake_parse_arguments (LAYER "" "" "USES;HEADERS;LINKS" ${ARGN})
    foreach (used IN LISTS LAYER_USES)
        if (NOT used IN_LIST STOPWRIGHT_LAYERS)
            message (FATAL_ERROR "Layers.cmake: ${folder} may not use ${used}, which is not above it.")
        endif()
    endforeach()
    list (APPEND STOPWRIGHT_LAYERS ${folder})
    set (STOPWRIGHT_USES_${folder} ${LAYER_USES})
    set (STOPWRIGHT_HEADERS_${folder} ${LAYER_HEADERS})
    set (STOPWRIGHT_LINKS_${folder} ${LAYER_LINKS})
endmacro()

stopwright_layer (Units)

stopwright_layer (Circuit USES Units
                          HEADERS Eigen/
                          LINKS Eigen3::Eigen)

stopwright_layer (Tone    USES Units Circuit)

stopwright_layer (Organ   USES Units Circuit Tone
                          HEADERS nlohmann/ fcntl.h sys/stat.h unistd.h
                          LINKS nlohmann_json::nlohmann_json)

stopwright_layer (Study   USES Units Circuit Tone Organ
                          HEADERS Eigen/ fftw3.h
                          LINKS Eigen3::Eigen PkgConfig::fftw3)

stopwright_layer (Sound   USES Units Circuit Tone Organ Study
                          HEADERS xmmintrin.h)

stopwright_layer (Sheet   USES Units Circuit Tone Organ Study Sound)

stopwright_layer (Command USES Units Circuit Tone Organ Study Sound Sheet
                          HEADERS sndfile.h CLI/ fcntl.h unistd.h stopwright/
                          LINKS PkgConfig::sndfile CLI11::CLI11)

stopwright_layer (Bench   USES Units Circuit Tone Organ Study Sound Sheet Command
                          HEADERS sys/resource.h unistd.h
                                  stopwright/ juce_core/ juce_events/ juce_data_structures/ juce_graphics/ juce_gui_basics/
                                  juce_gui_extra/ juce_audio_basics/ juce_audio_devices/ juce_audio_formats/
                                  juce_audio_processors/ juce_audio_utils/ juce_audio_plugin_client/)
