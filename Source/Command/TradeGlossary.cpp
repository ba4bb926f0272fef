// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/TradeGlossary.h"

#include <stopwright/Glossary.h>

namespace stopwright
{

const Glossary& tradeGlossary()
{
    static const auto glossary = Glossary::parse (glossaryText, "Glossary.json");
    return glossary;
}

} // namespace stopwright
