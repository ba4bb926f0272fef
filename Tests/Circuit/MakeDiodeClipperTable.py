# SPDX-License-Identifier: GPL-3.0-or-later
"""Prints DiodeClipperTable.h: the diode clipper solved as an ordinary differential equation.

2.2 kohm from a sine of 5 V at 1 kHz, 10 nF and two diodes back to back (2.52 nA, n Vt = 45.3 mV):
  C dv/dt = (u - v) / R - 2 Is sinh (v / n Vt) - 2 G v,  G the conductance that JunctionLaw has beside each junction.
Implicit Runge-Kutta of order 5 (Radau IIA) at relative 1e-12, with the Jacobian given; from v = 0.

    /usr/bin/python3 Tests/Circuit/MakeDiodeClipperTable.py > Tests/Circuit/DiodeClipperTable.h
"""

import numpy
from scipy.integrate import solve_ivp

R, C, IS, NVT, G = 2.2e3, 10e-9, 2.52e-9, 45.3e-3, 1e-12
AMPLITUDE, FREQUENCY = 5.0, 1000.0
ROWS, STEP = 64, 1 / 32000.0


def rate(t, v):
    u = AMPLITUDE * numpy.sin(2 * numpy.pi * FREQUENCY * t)
    return ((u - v) / R - 2 * IS * numpy.sinh(v / NVT) - 2 * G * v) / C


def slope(t, v):
    return numpy.array([[(-1 / R - 2 * IS / NVT * numpy.cosh(v[0] / NVT) - 2 * G) / C]])


times = STEP * numpy.arange(1, ROWS + 1)
solution = solve_ivp(rate, (0.0, times[-1]), [0.0], method="Radau", t_eval=times, rtol=1e-12, atol=1e-14, jac=slope,
                     max_step=1e-6)
assert solution.success

print("""// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Made by MakeDiodeClipperTable.py (scipy.integrate.solve_ivp, Radau IIA, relative tolerance 1e-12).

namespace stopwright
{

/// Volts of the diode clipper of that script, 32000 times a second from 1/32000 s on.
inline constexpr double diodeClipperVolts[] = {""")
for row in range(0, ROWS, 4):
    print("    " + ", ".join("%.13f" % v for v in solution.y[0][row:row + 4]) + ("," if row + 4 < ROWS else ""))
print("""};

} // namespace stopwright""")
