# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../leads.json: inductance of straight round leads by quadrature of Neumann's integral.

Run: python3 leads.py (SciPy; a second). Self-inductance: mean over the cross-section of the mutual inductance of two
filaments, with the density of distances of two random points of a disc (disc line picking, elementary).
"""

import numpy as np
from scipy.integrate import dblquad, quad

from written import write

CASES = [(0.1, 0.25e-3, 5e-3), (0.2, 0.5e-3, 5e-3), (0.05, 0.1e-3, 2e-3), (1.0, 1e-3, 0.02), (0.02, 0.4e-3, 5e-3)]


def mutual(length, distance):
    """mu0/4 pi times the double integral of 1/r over two parallel filaments; one integral by hand, over the offset."""
    inner = lambda u: (length - u) / np.hypot(u, distance)
    cut = min(length, 20 * distance)
    parts = [(0, cut)] + ([(cut, length)] if cut < length else [])
    return 2e-7 * sum(quad(inner, a, b, epsabs=0, epsrel=1e-12, limit=200)[0] for a, b in parts)


def own(length, radius):
    density = lambda s: (4 * s / (np.pi * radius ** 2) * np.arccos(s / (2 * radius))
                         - 2 * s * s / (np.pi * radius ** 3) * np.sqrt(1 - (s / (2 * radius)) ** 2))
    return quad(lambda s: density(s) * mutual(length, s), 0, 2 * radius, epsabs=0, epsrel=1e-9, limit=200)[0]


def main():
    check = dblquad(lambda a, b: 1e-7 / np.hypot(a - b, 5e-3), 0, 0.1, 0, 0.1, epsabs=0, epsrel=1e-9)[0]
    assert abs(check / mutual(0.1, 5e-3) - 1) < 1e-7
    out = [dict(length=l, radius=r, distance=d, own=float('%.9g' % own(l, r)), mutual=float('%.9g' % mutual(l, d)))
           for l, r, d in CASES]
    for c in out:
        print(c, 'pair', 2 * (c['own'] - c['mutual']))
    origin = ('Neumann\'s integral by quadrature (scripts/leads.py, SciPy), independent of this program. A straight round '
              'wire of even current density, and two such parallel side by side; m and H.')
    write('leads.json', [('{"length"', 2)], origin=origin, cases=out)


if __name__ == '__main__':
    main()
