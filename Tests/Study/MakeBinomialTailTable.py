# SPDX-License-Identifier: GPL-3.0-or-later
r"""Prints BinomialTailTable.h: tails of the binomial distribution for p = 1/2, in whole numbers and rounded once.

    /usr/bin/python3 Tests/Study/MakeBinomialTailTable.py | clang-format-14 --assume-filename=Tests/Study/Table.h \
        > Tests/Study/BinomialTailTable.h
"""

from fractions import Fraction
from math import comb


def tail(right, rounds):
    return Fraction(sum(comb(rounds, i) for i in range(right, rounds + 1)), 2**rounds)


ROWS = [(right, rounds) for rounds in range(1, 21) for right in range(rounds + 1)]
ROWS += [(right, 100) for right in range(0, 101, 5)]
ROWS += [(right, 999) for right in (1, 400, 499, 500, 501, 700, 999)]
ROWS += [(right, 1000) for right in (0, 1, 250, 450, 499, 500, 501, 527, 600, 750, 900, 999, 1000)]

print("""// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Made by MakeBinomialTailTable.py (whole numbers of any size, one rounding).

namespace stopwright
{

struct BinomialTail
{
    int right;
    int rounds;
    double chance; ///< of at least so many right by guessing
};

inline constexpr BinomialTail binomialTails[] = {""")
for index, (right, rounds) in enumerate(ROWS):
    comma = "," if index + 1 < len(ROWS) else ""
    print("    { %d, %d, %.17g }%s" % (right, rounds, float(tail(right, rounds)), comma))
print("""};

} // namespace stopwright""")
