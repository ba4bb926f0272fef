// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchApplication.h"

START_JUCE_APPLICATION (stopwright::BenchApplication)
