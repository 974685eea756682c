# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../wild.json: a hundred random windings each, with every wire at its place.

Run: python3 wild.py (SciPy; some minutes). Hard discs are shuffled in the section's box (Monte Carlo from a thinned
triangular lattice). Leakage and field at the wires: finite elements on rectangles with every wire a disc of even current
density. Capacitance: line multipoles on every wire and their images in the tongue (all one dielectric), least squares on
the wires' surfaces.
"""

import numpy as np

from rectangles import Field, graded
from written import write

MM = 1e-3
EPS0 = 8.8541878128e-12
WINDINGS = 100

CASES = [
    dict(id='R1', title='wild primary under an even secondary', w=8, h=16, box=(1, 4, 1, 15), other=(4.5, 6, 1, 15),
         bare=0.52, overall=0.6, fill=0.7),
    dict(id='R2', title='wild primary beside an even secondary', w=8, h=16, box=(1, 5, 1, 7.5), other=(1, 5, 8.5, 15),
         bare=0.6, overall=0.7, fill=0.65),
    dict(id='R3', title='few thick wires, loosely laid', w=7, h=14, box=(1, 3, 1, 13), other=(3.4, 5, 1, 13),
         bare=0.7, overall=0.8, fill=0.55),
]


def places(c, rng):
    """Centres of discs in the box, mm; first those of a triangular lattice, then shuffled."""
    x0, x1, y0, y1 = c['box']
    d = c['overall']
    count = int(c['fill'] * (x1 - x0) * (y1 - y0) / (np.pi / 4 * d * d))
    columns = int(np.floor((x1 - x0 - d) / (d * np.sqrt(3) / 2))) + 1
    rows = int(np.floor((y1 - y0 - d) / d - 0.5)) + 1
    # The lattice is stretched to the room there is, so that discs have play.
    sx = (x1 - x0 - d) / max(1, columns - 1)
    sy = (y1 - y0 - d) / (rows - 0.5)
    sites = np.array([(x0 + d / 2 + i * sx, y0 + d / 2 + (j + 0.5 * (i % 2)) * sy)
                      for i in range(columns) for j in range(rows)])
    assert count <= len(sites), (count, len(sites))
    at = sites[rng.permutation(len(sites))[:count]]
    for sweep in range(300):
        step = 0.3 * d
        for k in rng.permutation(count):
            new = at[k] + rng.uniform(-step, step, 2)
            if not (x0 + d / 2 <= new[0] <= x1 - d / 2 and y0 + d / 2 <= new[1] <= y1 - d / 2):
                continue
            apart = np.sum((at - new) ** 2, axis=1)
            apart[k] = np.inf
            if apart.min() >= d * d:
                at[k] = new
    return at * MM


def disc_rule(rings=4, spokes=12):
    """Points and weights that average over a unit disc."""
    g, w = np.polynomial.legendre.leggauss(rings)
    r = np.sqrt((g + 1) / 2)
    angle = 2 * np.pi * (np.arange(spokes) + 0.5) / spokes
    points = np.array([(a * np.cos(t), a * np.sin(t)) for a in r for t in angle])
    return points, np.repeat(w / 2, spokes) / spokes


class Grid:
    def __init__(self, c, cells):
        b, o = c['box'], c['other']
        finest = c['bare'] * MM / cells
        xs = np.array([0, c['w'], b[0], b[1], o[0], o[1]]) * MM
        ys = np.array([0, c['h'], b[2], b[3], o[2], o[3]]) * MM
        self.field = Field(graded(xs, finest, 1.3, finest), graded(ys, finest, 1.3, finest), 3)
        self.other = self.field.load(tuple(MM * v for v in o))
        nodes = self.field.basis.nodes
        self.polys = []
        for i in range(4):
            p = np.polynomial.Polynomial.fromroots(np.delete(nodes, i))
            self.polys.append(p / p(nodes[i]))

    def find(self, points):
        f = self.field
        i = np.clip(np.searchsorted(f.x, points[:, 0]) - 1, 0, len(f.x) - 2)
        j = np.clip(np.searchsorted(f.y, points[:, 1]) - 1, 0, len(f.y) - 2)
        hx, hy = f.x[i + 1] - f.x[i], f.y[j + 1] - f.y[j]
        u, v = 2 * (points[:, 0] - f.x[i]) / hx - 1, 2 * (points[:, 1] - f.y[j]) / hy - 1
        dofs = (3 * i[:, None] + np.arange(4))[:, :, None] * f.shape[1] + (3 * j[:, None] + np.arange(4))[:, None, :]
        return u, v, hx, hy, dofs

    def load(self, points, weights):
        u, v, _, _, dofs = self.find(points)
        px, py = np.array([p(u) for p in self.polys]).T, np.array([p(v) for p in self.polys]).T
        value = px[:, :, None] * py[:, None, :] * weights[:, None, None]
        return np.bincount(dofs.ravel(), value.ravel(), self.field.size)

    def strength(self, a, points):
        """|H|^2 at points."""
        from rectangles import MU0
        u, v, hx, hy, dofs = self.find(points)
        px, py = np.array([p(u) for p in self.polys]).T, np.array([p(v) for p in self.polys]).T
        dx = np.array([p.deriv()(u) for p in self.polys]).T * (2 / hx)[:, None]
        dy = np.array([p.deriv()(v) for p in self.polys]).T * (2 / hy)[:, None]
        local = a[dofs]
        gx = np.einsum('kij,ki,kj->k', local, dx, py)
        gy = np.einsum('kij,ki,kj->k', local, px, dy)
        return (gx ** 2 + gy ** 2) / MU0 ** 2


def magnetic(grid, c, at):
    """lambda against the other section, H/m per turn squared; mean square field at the wires for one ampere in each."""
    rule, weight = disc_rule()
    points = (at[:, None, :] + rule[None, :, :] * c['bare'] * MM / 2).reshape(-1, 2)
    right = grid.load(points, np.tile(weight, len(at)) / len(at)) - grid.other
    a = grid.field.solve(right)
    # A wire's own field is zero at its centre.
    return right @ a, len(at) ** 2 * grid.strength(a, at).mean()


def charges(at, radius, volts, order):
    """Charge a metre of each wire over 2 pi eps at the given potentials, the tongue x = 0 at zero."""
    n, m = len(at), order
    spokes = 4 * m + 4
    angle = 2 * np.pi * np.arange(spokes) / spokes
    z = at[:, 0] + 1j * at[:, 1]
    on = (z[:, None] + radius * np.exp(1j * angle)[None, :]).ravel()
    own = on[:, None] - z[None, :]
    image = on[:, None] + np.conj(z)[None, :]  # mirrored wire at -x + iy
    blocks = [-np.log(np.abs(own)) + np.log(np.abs(image))]
    for k in range(1, m + 1):
        d = (radius / own) ** k
        # Image of Re (r/(z - z0))^k is -Re of the same about the mirrored centre with conjugate distance reversed.
        e = (radius / np.conj(-image)) ** k
        blocks += [d.real - e.real, d.imag - e.imag]
    system = np.concatenate(blocks, axis=1)
    wanted = np.repeat(volts, spokes, axis=0)
    solution = np.linalg.solve(system.T @ system, system.T @ wanted)
    residual = np.abs(system @ solution - wanted).max()
    return solution[:n], residual


def electric(c, at, rng, order=3):
    """Per metre over eps0 eps_r: capacitance of the whole body to the tongue; 2 W / V^2 with the voltage rising by turn
    number, turns numbered from the tongue outward, place in the row and a scatter of one wire in depth (free tongue
    potential at zero)."""
    n = len(at)
    depth = at[:, 0] + rng.normal(0, c['overall'] * MM, n)
    row = np.floor((depth - depth.min()) / (c['overall'] * MM * 0.9))
    along = np.where(row % 2 == 0, at[:, 1], -at[:, 1])
    number = np.empty(n)
    number[np.lexsort((along, row))] = (np.arange(n) + 0.5) / n
    volts = np.stack((np.ones(n), number), axis=1)
    q, residual = charges(at, c['bare'] * MM / 2, volts, order)
    q *= 2 * np.pi
    return q[:, 0].sum(), q[:, 1] @ number, residual


def spread(values):
    values = np.array(values)
    return dict(mean=float('%.7g' % values.mean()), deviation=float('%.4g' % values.std(ddof=1)),
                least=float('%.7g' % values.min()), greatest=float('%.7g' % values.max()))


def main():
    out = []
    for c in CASES:
        rng = np.random.default_rng(20260000 + int(c['id'][1:]))
        all_places = [places(c, rng) for _ in range(WINDINGS)]
        grid, finer = Grid(c, 2.5), Grid(c, 4)
        magnetics = [magnetic(grid, c, at) for at in all_places]
        check = magnetic(finer, c, all_places[0])
        electrics = [electric(c, at, rng) for at in all_places]
        case = dict(c, wires=len(all_places[0]), windings=WINDINGS)
        case['lambda'] = spread([m[0] for m in magnetics])
        case['square_field'] = spread([m[1] for m in magnetics])
        case['mesh'] = [float('%.2g' % (magnetics[0][k] / check[k] - 1)) for k in (0, 1)]
        case['to_tongue'] = spread([e[0] for e in electrics])
        case['own'] = spread([e[1] for e in electrics])
        case['residual'] = float('%.2g' % max(e[2] for e in electrics))
        print(case, flush=True)
        out.append(case)
    origin = ('Random windings of our own (scripts/wild.py), independent of this program: every wire at its place, hard discs '
              'shuffled in the box. Closed window, mm. lambda: twice the energy with +1 ampere-turn in the wild section '
              '(series) and -1 spread evenly over `other`, H/m; square_field: mean of |H|^2 at the wires with 1 A in '
              'each, (A/m)^2; to_tongue: capacitance of all wires at one potential to the tongue as an endless plane, '
              'over eps0 eps_r, one dielectric, no other conductor; own: 2 W / V^2 with the voltage rising by turn '
              'number, the start at the tongue\'s potential. mesh: relative change of lambda and square_field on a finer '
              'mesh; residual: greatest error of potential on a wire of 1 V.')
    write('wild.json', [('{"id"', 2)], origin=origin, cases=out)


if __name__ == '__main__':
    main()
