// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/Glossary.h"

namespace stopwright
{

/// The glossary that comes with the programs (Assets/Glossary.json), read once. Threading: [any].
const Glossary& tradeGlossary();

} // namespace stopwright
