// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/Missing.h"
#include "Upward.h"
