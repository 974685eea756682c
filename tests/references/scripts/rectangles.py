# SPDX-License-Identifier: GPL-3.0-or-later
"""Finite elements on a grid of rectangles: potential of currents in rectangular regions, iron of infinite permeability.

Elements are tensor products of Lagrange polynomials on Gauss-Lobatto points. Grid lines lie on every edge of current and
iron, so that the source is smooth in each element; cells in iron are left out (natural condition: no field along iron).
`axis`: r of x = 0; the unknown is then r A and lengths are round a circle (results in H instead of H/m).
"""
import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as spla

MU0 = 4e-7 * np.pi


def lobatto(p):
    """Points and weights of p + 1 Gauss-Lobatto points on [-1, 1]."""
    inner = np.polynomial.legendre.Legendre.basis(p).deriv().roots()
    x = np.concatenate(([-1.0], np.sort(inner.real), [1.0]))
    w = 2 / (p * (p + 1) * np.polynomial.legendre.Legendre.basis(p)(x) ** 2)
    return x, w


class Basis:
    def __init__(self, p):
        self.p = p
        self.nodes, _ = lobatto(p)
        self.gauss, self.weights = np.polynomial.legendre.leggauss(p + 3)
        self.value = np.empty((p + 1, p + 3))
        self.slope = np.empty((p + 1, p + 3))
        for i in range(p + 1):
            poly = np.polynomial.Polynomial.fromroots(np.delete(self.nodes, i))
            poly = poly / poly(self.nodes[i])
            self.value[i] = poly(self.gauss)
            self.slope[i] = poly.deriv()(self.gauss)

    def matrices(self, a, b, weight):
        """Mass, stiffness and load of [a, b] with a weight function of the coordinate."""
        half = (b - a) / 2
        g = weight((a + b) / 2 + half * self.gauss) * self.weights
        return (self.value * g) @ self.value.T * half, (self.slope * g) @ self.slope.T / half


def graded(points, finest, ratio=1.35, coarsest=np.inf):
    """Grid lines through `points`, `finest` at each of them and growing geometrically between."""
    points = sorted(set(np.round(points, 12)))
    lines = [points[0]]
    for a, b in zip(points, points[1:]):
        half, steps, h, at = (b - a) / 2, [], finest, 0.0
        while at < half:
            steps.append(min(h, coarsest))
            at += steps[-1]
            h *= ratio
        steps = np.array(steps) * half / at
        both = np.concatenate((steps, steps[::-1]))
        lines.extend(a + np.cumsum(both))
        lines[-1] = b
    return np.array(lines)


class Field:
    """Solves -div(grad A)/mu0 = J; `iron`: rectangles (x0, x1, y0, y1); `zero`: sides of the grid where A = 0."""

    def __init__(self, x, y, order=3, iron=(), zero=(), axis=None):
        self.x, self.y, self.basis = np.asarray(x), np.asarray(y), Basis(order)
        p = order
        weight = (lambda t: 1.0 / (axis + t) / (2 * np.pi)) if axis is not None else (lambda t: np.ones_like(t))
        self.shape = (p * (len(x) - 1) + 1, p * (len(y) - 1) + 1)
        one = lambda t: np.ones_like(t)
        self.mx = [self.basis.matrices(a, b, weight) for a, b in zip(x, x[1:])]
        self.my = [self.basis.matrices(a, b, one) for a, b in zip(y, y[1:])]
        cells = [(i, j) for i in range(len(x) - 1) for j in range(len(y) - 1)
                 if not any(r[0] <= (x[i] + x[i + 1]) / 2 <= r[1] and r[2] <= (y[j] + y[j + 1]) / 2 <= r[3]
                            for r in iron)]
        self.cells = cells
        ii = np.array([c[0] for c in cells])
        jj = np.array([c[1] for c in cells])
        MX = np.array([m[0] for m in self.mx])[ii]
        KX = np.array([m[1] for m in self.mx])[ii]
        MY = np.array([m[0] for m in self.my])[jj]
        KY = np.array([m[1] for m in self.my])[jj]
        k = np.einsum('eab,ecd->eacbd', KX, MY) + np.einsum('eab,ecd->eacbd', MX, KY)
        n = (p + 1) ** 2
        local = np.arange(p + 1)
        self.dofs = ((p * ii[:, None, None] + local[None, :, None]) * self.shape[1]
                     + p * jj[:, None, None] + local[None, None, :]).reshape(len(cells), n)
        rows = np.repeat(self.dofs, n, axis=1).ravel()
        cols = np.tile(self.dofs, (1, n)).ravel()
        size = self.shape[0] * self.shape[1]
        matrix = sp.csr_matrix((k.reshape(-1), (rows, cols)), shape=(size, size)) / MU0
        used = np.zeros(size, bool)
        used[self.dofs.ravel()] = True
        grid = np.arange(size).reshape(self.shape)
        for side in zero:
            edge = {'x0': grid[0], 'x1': grid[-1], 'y0': grid[:, 0], 'y1': grid[:, -1]}[side]
            used[edge] = False
        self.free = np.flatnonzero(used)
        self.gauge = not zero
        self.size = size
        self.stiffness = matrix
        inner = matrix[self.free][:, self.free].tocsc()
        if self.gauge:  # balanced currents only: one value is free
            self.free = self.free[1:]
            inner = inner[1:][:, 1:]
        self.solver = spla.splu(inner, permc_spec='COLAMD' if size < 2000 else 'MMD_AT_PLUS_A',
                                options=dict(SymmetricMode=True), diag_pivot_thresh=0.0)

    def load(self, box, turns=1.0):
        """Right side of `turns` amperes spread evenly over a rectangle (x0, x1, y0, y1)."""
        p, right = self.basis.p, np.zeros(self.shape)
        density = turns / ((box[1] - box[0]) * (box[3] - box[2]))
        line = []
        for grid, a, b in ((self.x, box[0], box[1]), (self.y, box[2], box[3])):
            v = np.zeros(p * (len(grid) - 1) + 1)
            for k in range(len(grid) - 1):
                if a - 1e-12 <= grid[k] and grid[k + 1] <= b + 1e-12:
                    v[p * k:p * k + p + 1] += (self.basis.value @ self.basis.weights) * (grid[k + 1] - grid[k]) / 2
            assert abs(v.sum() - (b - a)) < 1e-9 * (b - a), 'a grid line is missing on an edge'
            line.append(v)
        return (density * np.outer(*line)).ravel()

    def solve(self, right):
        a = np.zeros(self.size)
        a[self.free] = self.solver.solve(right[self.free])
        return a

    def pair(self, loads):
        """lambda_ij = twice the energy with +1 A in i and -1 A in j, of loads of one ampere-turn each."""
        n = len(loads)
        out = np.zeros((n, n))
        for i in range(n):
            for j in range(i):
                right = loads[i] - loads[j]
                out[i, j] = out[j, i] = right @ self.solve(right)
        return out


def window(sections, w, h, ends, order=3, finest=None, axis=None, iron=(), far=None):
    """lambda of sections [(x0, x1, y0, y1)] in m. ends 'closed': iron on four sides; 'open': tongue at x = 0 without end,
    free space beyond; 'finite': only the rectangles `iron`, x may be negative."""
    finest = finest or min(s[1] - s[0] for s in sections) / 2
    xs = [v for s in sections for v in s[:2]] + [v for r in iron for v in r[:2]]
    ys = [v for s in sections for v in s[2:]] + [v for r in iron for v in r[2:]]
    far = far or 300 * max(w, h)
    if ends == 'closed':
        x, y, zero = graded(xs + [0, w], finest), graded(ys + [0, h], finest), ()
    elif ends == 'open':
        x, y = graded(xs + [0, far], finest), graded(ys + [-far, far], finest)
        zero = ('x1', 'y0', 'y1')
    else:
        x, y = graded(xs + [-far, far], finest), graded(ys + [-far, far], finest)
        zero = ('x0', 'x1', 'y0', 'y1')
    f = Field(x, y, order, iron, zero, axis)
    return f.pair([f.load(s) for s in sections])
