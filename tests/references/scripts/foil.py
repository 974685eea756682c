# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../foil.json: loss of foil windings against frequency in a closed window.

Run: python3 foil.py (SciPy; half a minute). Foils carry one ampere each, their currents free to spread in the foil; the
return winding carries them back evenly. Each number is solved at two meshes; the difference is kept as `mesh`.
"""

import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as spla

from rectangles import MU0, Field, graded
from written import write

MM = 1e-3
COPPER = 1.7241e-8

CASES = [
    dict(id='F1', title='eight foils over the whole height', w=8, h=20, count=8, thick=0.1, gap=0.05, x=1, low=0, high=20,
         back=(3, 5, 0, 20)),
    dict(id='F2', title='eight foils with 2 mm margins', w=8, h=20, count=8, thick=0.1, gap=0.05, x=1, low=2, high=18,
         back=(3, 5, 2, 18)),
    dict(id='F3', title='four thick foils with 1.5 mm margins, return at the tongue', w=8, h=24, count=4, thick=0.3, gap=0.1,
         x=3.5, low=1.5, high=22.5, back=(1, 3, 1.5, 22.5)),
    dict(id='F4', title='five foils between two halves of the return, margins', w=7, h=18, count=5, thick=0.15, gap=0.05,
         x=2.6, low=1.5, high=16.5, back=(1, 2.4, 1, 17), other=(4.0, 5.4, 1, 17)),
]
FREQUENCIES = [1e3, 2e4, 1e5, 5e5]


def foils(c):
    step = c['thick'] + c['gap']
    return [tuple(MM * v for v in (c['x'] + k * step, c['x'] + k * step + c['thick'], c['low'], c['high']))
            for k in range(c['count'])]


def losses(c, order, finest_x, finest_y):
    """Per frequency: loss of each foil over that of direct current, and Im Z / omega of the series, H/m."""
    all_foils = foils(c)
    backs = [tuple(MM * v for v in b) for b in (c['back'], c.get('other')) if b]
    w, h = c['w'] * MM, c['h'] * MM
    xs = [v for b in all_foils + backs for v in b[:2]] + [0, w]
    ys = [v for b in all_foils + backs for v in b[2:]] + [0, h]
    f = Field(graded(xs, finest_x), graded(ys, finest_y), order)
    n, count = f.size, len(all_foils)
    mass = [sp.csr_matrix((n, n))] * count
    p = order
    for k, b in enumerate(all_foils):
        rows, cols, values = [], [], []
        for e, (i, j) in enumerate(f.cells):
            x, y = (f.x[i] + f.x[i + 1]) / 2, (f.y[j] + f.y[j + 1]) / 2
            if b[0] < x < b[1] and b[2] < y < b[3]:
                local = np.kron(f.mx[i][0], f.my[j][0])
                dofs = f.dofs[e]
                rows.append(np.repeat(dofs, (p + 1) ** 2))
                cols.append(np.tile(dofs, (p + 1) ** 2))
                values.append(local.ravel())
        mass[k] = sp.csr_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(cols))), shape=(n, n))
    loads = [f.load(b, (b[1] - b[0]) * (b[3] - b[2])) for b in all_foils]  # integral of the basis over the foil
    back = sum(f.load(b, -count / len(backs)) for b in backs)
    areas = np.array([(b[1] - b[0]) * (b[3] - b[2]) for b in all_foils])
    sigma = 1 / COPPER
    conducting = sum(mass[1:], mass[0])
    columns = sp.csr_matrix(np.array(loads).T)
    factors, inductance = [], []
    for frequency in FREQUENCIES:
        omega = 2 * np.pi * frequency
        # Unknowns: A, and U_k / (j omega), which scales like A; A is symmetric. A constant in both is free: A_0 = 0.
        system = sp.bmat([[f.stiffness + 1j * omega * sigma * conducting, -1j * omega * sigma * columns],
                          [-1j * omega * sigma * columns.T, 1j * omega * sigma * sp.diags(areas)]]).tocsc()
        right = np.concatenate((back, np.ones(count))).astype(complex)
        solution = np.zeros(n + count, complex)
        solution[1:] = spla.spsolve(system[1:, 1:], right[1:])
        a, u = solution[:n], solution[n:]
        loss = np.empty(count)
        for k in range(count):
            ma = mass[k] @ a
            square = (abs(u[k]) ** 2 * areas[k] + np.vdot(a, ma) - 2 * (np.conj(u[k]) * (loads[k] @ a))).real
            loss[k] = sigma * omega ** 2 * square
        factors.append(loss * sigma * areas)
        inductance.append(float((u.sum() + back @ a).real))
    return np.array(factors), np.array(inductance)


def main():
    out = []
    for c in CASES:
        coarse = losses(c, 3, c['thick'] * MM / 2, c['thick'] * MM)
        fine = losses(c, 4, c['thick'] * MM / 2, c['thick'] * MM / 4)
        case = dict(c)
        case['mesh'] = float('%.2g' % np.max(np.abs(coarse[0] / fine[0] - 1)))
        case['factor'] = [[float('%.6g' % v) for v in row] for row in fine[0]]
        case['winding'] = [float('%.6g' % row.mean()) for row in fine[0]]
        case['L'] = [float('%.7g' % v) for v in fine[1]]
        out.append(case)
        print(c['id'], case['mesh'], case['winding'], case['L'])
    origin = ('Finite elements of order 3 and 4 on graded rectangles (scripts/foil.py), independent of this program. Closed '
              'window, lengths in mm; foil k from x + k (thick + gap), from low to high; `back` (and `other`) return the '
              'current evenly. Resistivity 1.7241e-8 ohm m. factor: loss of each foil over that of direct current, a row a '
              'frequency; winding: their mean; L: Im Z / omega of foils in series with the return, H per metre of turn; '
              'mesh: greatest relative change of a factor between two meshes.')
    write('foil.json', [('{"id"', 2)], origin=origin, frequencies=FREQUENCIES, cases=out)


if __name__ == '__main__':
    main()
