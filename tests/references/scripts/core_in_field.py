# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../core_in_field.json: flux that a lamination core draws from a uniform field along its legs.

Run: /usr/bin/python3 core_in_field.py (SciPy; some minutes). Magnetic scalar potential, trilinear finite elements on
graded rectangles, an eighth of the space; the iron's outline is exact. Each number is solved at two meshes and the
difference kept. Checked on a cube of great permeability: 3.6443 times its volume (polarizability of the conducting
cube, J. Helsing and K.-M. Perfekt, Appl. Comput. Harmon. Anal. 34 (2013), from memory).
"""
import itertools

import numpy as np
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import LinearOperator, cg

from written import write


def graded(cuts, finest, far, growth):
    """Points from 0 through every cut to `far`: fine beside each cut, coarser between and beyond."""
    points = [0.0]
    for a, b in zip([0.0] + cuts[:-1], cuts):
        up, down = [a], [b]
        step = finest
        # From a cut inward both ways; from the plane of symmetry only from the cut.
        while True:
            left = up[-1] + (step if a > 0 else 0)
            right = down[-1] - step
            if right - left < 1.5 * step:
                break
            if a > 0:
                up.append(left)
            down.append(right)
            step *= growth
        gap = down[-1] - up[-1]
        inner = list(np.linspace(up[-1], down[-1], max(1, round(gap / step)) + 1)[1:-1])
        points += up[1:] + inner + down[::-1]
    step = finest
    while points[-1] < far:
        points.append(points[-1] + step)
        step *= growth
    return np.unique(np.round(points, 12))


def stiffness_1d():
    return np.array([[1, -1], [-1, 1.0]]), np.array([[2, 1], [1, 2.0]]) / 6


def solve(grids, iron, mu):
    """Potential per A/m of field along y; planes x = 0, z = 0 mirrors, y = 0 at zero potential."""
    shape = tuple(len(g) for g in grids)
    d = [np.diff(g) for g in grids]
    middles = [(g[1:] + g[:-1]) / 2 for g in grids]
    inside = iron(*np.meshgrid(*middles, indexing='ij'))
    permeability = np.where(inside, mu, 1.0)
    dx, dy, dz = np.meshgrid(*d, indexing='ij')
    k1, m1 = stiffness_1d()
    index = np.arange(np.prod(shape)).reshape(shape)
    corners = list(itertools.product((0, 1), repeat=3))
    at = [index[i:shape[0] - 1 + i, j:shape[1] - 1 + j, k:shape[2] - 1 + k] for i, j, k in corners]
    rows, cols, values = [], [], []
    for p, (i, j, k) in enumerate(corners):
        for q, (r, s, t) in enumerate(corners):
            value = permeability * (k1[i, r] * m1[j, s] * m1[k, t] * dy * dz / dx
                                    + m1[i, r] * k1[j, s] * m1[k, t] * dx * dz / dy
                                    + m1[i, r] * m1[j, s] * k1[k, t] * dx * dy / dz)
            rows.append(at[p].ravel())
            cols.append(at[q].ravel())
            values.append(value.ravel())
    matrix = coo_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(cols)))).tocsr()
    y = np.broadcast_to(grids[1][None, :, None], shape)
    fixed = np.zeros(shape, bool)
    fixed[:, 0, :] = fixed[:, -1, :] = fixed[-1, :, :] = fixed[:, :, -1] = True
    potential = (-y).astype(float).ravel().copy()
    free = ~fixed.ravel()
    inner = matrix[free][:, free]
    load = -matrix[free][:, ~free] @ potential[~free]
    scale = 1 / inner.diagonal()
    found, state = cg(inner, load, x0=potential[free] * 0, tol=1e-9, maxiter=40000,
                      M=LinearOperator(inner.shape, lambda v: scale * v))
    assert state == 0
    potential[free] = found
    potential = potential.reshape(shape)
    mean = sum(potential[i:shape[0] - 1 + i, j:shape[1] - 1 + j, k:shape[2] - 1 + k] * (1 if j else -1)
               for i, j, k in corners) / 4
    flux = -permeability * mean / dy  # B_y over mu0 H, mean of each element
    return middles, flux, dx * dy * dz


def drawn(case, mu, finest, far, growth):
    """Mean flux per tesla over the window's height in the first leg and in one outer leg, m2, and at the middle."""
    a, w, h, outer, yoke, stack, legs = (case[k] for k in ('tongue', 'width', 'height', 'outer', 'yoke', 'stack', 'legs'))
    if legs == 1:
        xs = [a / 2, a / 2 + w, a / 2 + w + outer]
    else:
        xs = [w / 2, w / 2 + a]
    ys = [h / 2, h / 2 + yoke]
    zs = [stack / 2]
    far *= max(xs[-1], ys[-1])
    grids = [graded(c, finest * a, far, growth) for c in (xs, ys, zs)]

    def iron(x, y, z):
        window = (x > xs[0]) & (x < xs[1]) if legs == 1 else x < xs[0]
        return (x < xs[-1]) & (y < ys[-1]) & (z < zs[-1]) & ~(window & (y < ys[0]))

    (x, y, z), flux, volume = solve(grids, iron, mu)

    def leg(lo, hi, top):
        take = np.ix_((x > lo) & (x < hi), y < top, z < zs[0])
        return (flux[take] * volume[take]).sum() / top
    both = 4 if legs == 1 else 2  # of the tongue a quarter of its section is in the model, of a leg a half
    first = (0, xs[0]) if legs == 1 else (xs[0], xs[1])
    low = grids[1][1]
    result = [both * leg(*first, ys[0]), both * leg(*first, low)]
    if legs == 1:
        result += [2 * leg(xs[1], xs[2], ys[0]), 2 * leg(xs[1], xs[2], low)]
    return np.array(result)


def cube(finest, far, growth):
    grids = [graded([0.5], finest, far, growth)] * 3
    middles, flux, volume = solve(grids, lambda x, y, z: (x < 0.5) & (y < 0.5) & (z < 0.5), 1e5)
    take = np.ix_(*[m < 0.5 for m in middles])
    return (flux[take] * volume[take]).sum() / 0.125


MM = 1e-3
LENGTHS = ('tongue', 'width', 'height', 'outer', 'yoke', 'stack')
CASES = [
    dict(id='EI', title='scrapless shell, square stack', tongue=16, width=8, height=24, outer=8, yoke=8, stack=16, legs=1),
    dict(id='EI-thin', title='the same, half the stack', tongue=16, width=8, height=24, outer=8, yoke=8, stack=8, legs=1),
    dict(id='EI-thick', title='the same, twice the stack', tongue=16, width=8, height=24, outer=8, yoke=8, stack=32, legs=1),
    dict(id='M', title='shell with a wide window', tongue=12, width=9, height=30, outer=6, yoke=6, stack=15, legs=1),
    dict(id='UI', title='scrapless two-leg core, square stack', tongue=10, width=10, height=30, outer=10, yoke=10, stack=10, legs=2),
    dict(id='UI-thick', title='the same, twice the stack', tongue=10, width=10, height=30, outer=10, yoke=10, stack=20, legs=2),
]


def converged(case, mu):
    coarse = drawn(case, mu, 0.05, 10, 1.3)
    fine = drawn(case, mu, 0.02, 16, 1.25)
    return [float('%.5g' % v) for v in fine], float('%.2g' % np.max(np.abs(coarse / fine - 1)))


if __name__ == '__main__':
    solved = []
    for case in CASES:
        for mu in (100, 1e4) if case['id'] == 'EI' else (1e4,):
            flux, mesh = converged({k: v * MM if k in LENGTHS else v for k, v in case.items()}, mu)
            solved.append({**case, 'permeability': mu, 'first': flux[0], 'first_middle': flux[1],
                           **({'outer_leg': flux[2]} if case['legs'] == 1 else {}), 'mesh': mesh})
    write('core_in_field.json', [('{"id"', 2)],
          origin='scripts/core_in_field.py: scalar potential, trilinear elements on graded rectangles',
          units='lengths mm; flux m2 (per tesla of the uniform field along the legs): mean over the height of the window, '
                'and at its middle; mesh: difference of two meshes, relative',
          cube={'expected': 3.6443, 'found': float('%.5g' % cube(0.006, 10, 1.25))}, cases=solved)
