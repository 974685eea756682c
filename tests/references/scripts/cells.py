# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../cells.json: cells of enamelled wires with dielectric loss.

Run: python3 cells.py (gmsh and SciPy; half a minute). Half a period of a row of round wires on a sheet on a plane, six-node
triangles with curved sides, complex permittivities. Each number is solved at two meshes; the difference is kept as `mesh`.
"""
import os
import subprocess
import tempfile

import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as spla

from written import write

EPS0 = 8.8541878128e-12
GAP = 0.02  # between wire and sheet, of the overall diameter

# Lengths in mm; permittivity and loss factor of enamel, sheet and filler.
CASES = [
    dict(id='D1', title='dry: enamel and paper lose, air does not', d=0.2, do=0.226, pitch=0.23, t=0.05,
         enamel=(3.5, 0.02), sheet=(2.5, 0.005), filler=(1, 0)),
    dict(id='D2', title='filled with lossy varnish', d=0.2, do=0.226, pitch=0.24, t=0.05,
         enamel=(3.5, 0.02), sheet=(3.2, 0.003), filler=(3.5, 0.05)),
    dict(id='D3', title='enamel on the plane without a sheet, dry', d=0.1, do=0.117, pitch=0.12, t=0,
         enamel=(3.5, 0.03), sheet=(3, 0), filler=(1, 0)),
    dict(id='D4', title='thick lossy sheet, wide pitch, dry', d=0.1, do=0.117, pitch=0.2, t=0.1,
         enamel=(3.5, 0.01), sheet=(4, 0.04), filler=(1, 0)),
    dict(id='D5', title='very lossy enamel', d=0.08, do=0.1, pitch=0.104, t=0.02,
         enamel=(4, 0.3), sheet=(3, 0.01), filler=(2, 0.1)),
]


def geometry(c, size):
    r, ro, half, t = c['d'] / 2, c['do'] / 2, c['pitch'] / 2, c['t']
    gap = GAP * c['do']  # a wire that touches would leave a cusp
    y, top = t + ro + gap, t + c['do'] + 2.5 * c['pitch']
    lines = ['SetFactory("OpenCASCADE");', 'Rectangle(1) = {0, %g, 0, %g, %g};' % (t, half, top - t)]
    lines += ['Disk(3) = {0, %g, 0, %g};' % (y, ro), 'Disk(4) = {0, %g, 0, %g};' % (y, r),
              'Rectangle(5) = {0, 0, 0, %g, %g};' % (half, top)]
    lines += ['BooleanIntersection(13) = { Surface{3}; Delete; }{ Surface{5}; };',
              'BooleanIntersection(14) = { Surface{4}; Delete; }{ Surface{5}; Delete; };',
              'BooleanDifference(23) = { Surface{13}; Delete; }{ Surface{14}; };',
              'BooleanDifference(21) = { Surface{1}; Delete; }{ Surface{23}; Surface{14}; };',
              'Recursive Delete { Surface{14}; }']
    if t > 0:
        lines += ['Rectangle(22) = {0, 0, 0, %g, %g};' % (half, t)]
    lines += ['BooleanFragments{ Surface{21, 23%s}; Delete; }{}' % (', 22' if t > 0 else '')]
    lines += ['Mesh.ElementOrder = 2;', 'Mesh.HighOrderOptimize = 0;', 'Mesh.MshFileVersion = 2.2;',
              'Mesh.SaveAll = 1;',
              'Mesh.MeshSizeMax = %g;' % (3 * size), 'Mesh.MeshSizeFromCurvature = %d;' % int(2 * np.pi * r / size),
              'Field[1] = Box; Field[1].XMin = -1; Field[1].XMax = 1; Field[1].YMin = -1; Field[1].YMax = %g;' % y,
              'Field[1].VIn = %g; Field[1].VOut = %g;' % (size, 3 * size),
              'Field[2] = Box; Field[2].XMin = -1; Field[2].XMax = %g; Field[2].YMin = %g; Field[2].YMax = %g;'
              % (0.4 * ro, t - 0.2 * ro, t + 0.3 * ro),
              'Field[2].VIn = %g; Field[2].VOut = 1;' % (size / 5),
              'Field[3] = Min; Field[3].FieldsList = {1, 2}; Background Field = 3;']
    return '\n'.join(lines) + '\n', y, top


def mesh(c, size):
    text, y, top = geometry(c, size)
    with tempfile.TemporaryDirectory() as folder:
        geo, msh = os.path.join(folder, 'c.geo'), os.path.join(folder, 'c.msh')
        with open(geo, 'w') as file:
            file.write(text)
        subprocess.run(['gmsh', '-2', '-v', '0', geo, '-o', msh], check=True)
        words = open(msh).read().split('\n')
    at = words.index('$Nodes')
    count = int(words[at + 1])
    rows = np.array([w.split() for w in words[at + 2:at + 2 + count]], float)
    index = {int(k): i for i, k in enumerate(rows[:, 0])}
    at = words.index('$Elements')
    elements = []
    for w in words[at + 2:at + 2 + int(words[at + 1])]:
        e = [int(v) for v in w.split()]
        if e[1] == 9:
            elements.append([index[k] for k in e[3 + e[2]:]])
    return rows[:, 1:3], np.array(elements), y, top


# Strang and Fix, seven points, exact to degree five (any text on finite elements).
A, B = (6 - np.sqrt(15)) / 21, (6 + np.sqrt(15)) / 21
RULE = [(1 / 3, 1 / 3, 9 / 80)] + [(u, v, (155 - np.sqrt(15)) / 2400) for u, v in ((A, A), (1 - 2 * A, A), (A, 1 - 2 * A))] \
    + [(u, v, (155 + np.sqrt(15)) / 2400) for u, v in ((B, B), (1 - 2 * B, B), (B, 1 - 2 * B))]


def slopes(u, v):
    w = 1 - u - v
    return np.array([[1 - 4 * w, 1 - 4 * w], [4 * u - 1, 0], [0, 4 * v - 1],
                     [4 * (w - u), -4 * u], [4 * v, 4 * u], [-4 * v, 4 * (w - v)]])


def capacitance(c, size):
    """Per area of layer, F/m2, complex."""
    nodes, elements, y, top = mesh(c, size)
    corners = nodes[elements]
    middle = corners[:, :3].mean(axis=1)
    eps = lambda pair: pair[0] * (1 - 1j * pair[1])
    reach = np.hypot(middle[:, 0], middle[:, 1] - y)
    material = np.where(middle[:, 1] < c['t'], eps(c['sheet']),
                        np.where(reach < c['do'] / 2, eps(c['enamel']), eps(c['filler'])))
    local = np.zeros((len(elements), 6, 6))
    for u, v, weight in RULE:
        s = slopes(u, v)
        jacobian = np.einsum('eki,kj->eij', corners, s)
        inverse = np.linalg.inv(jacobian)
        gradient = np.einsum('kj,eji->eki', s, inverse)
        local += np.einsum('eki,eli->ekl', gradient, gradient) * (np.abs(np.linalg.det(jacobian)) * weight)[:, None, None]
    values = local * material[:, None, None]
    rows, cols = np.repeat(elements, 6, axis=1), np.tile(elements, (1, 6))
    n = len(nodes)
    matrix = sp.csr_matrix((values.ravel(), (rows.ravel(), cols.ravel())), shape=(n, n))
    wire = np.abs(np.hypot(nodes[:, 0], nodes[:, 1] - y) - c['d'] / 2) < 1e-4 * c['d']
    plane = nodes[:, 1] < 1e-9
    used = np.zeros(n, bool)
    used[elements.ravel()] = True
    volts = wire.astype(complex)
    free = np.flatnonzero(used & ~wire & ~plane)
    volts[free] = spla.spsolve(matrix[free][:, free].tocsc(), -(matrix @ volts)[free])
    return EPS0 * (volts @ (matrix @ volts)) / (c['pitch'] / 2 * 1e-3)


def main():
    out = []
    for c in CASES:
        coarse, fine = capacitance(c, c['d'] / 12), capacitance(c, c['d'] / 30)
        case = dict(c, C=[float('%.7g' % fine.real), float('%.7g' % fine.imag)],
                    mesh=float('%.2g' % (abs(coarse - fine) / abs(fine))))
        print(case)
        out.append(case)
    origin = ('Finite elements of our own (scripts/cells.py; gmsh, six-node triangles), independent of this program. A row of '
              'enamelled wires on a sheet of thickness t on a plane, lengths in mm, each dielectric with its permittivity '
              'and loss factor; C: complex capacitance per area of layer, F/m2; mesh: relative change between two meshes. '
              'Between enamel and sheet there is filler, a fiftieth of the overall diameter.')
    write('cells.json', [('{"id"', 2)], origin=origin, cases=out)


if __name__ == '__main__':
    main()
