# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes ../windows.json: leakage between sections in two-leg windows, before a tongue and round it.

Run: python3 windows.py (SciPy; half a minute). Each number is solved at two meshes; the difference is kept as `mesh`.
"""

import numpy as np

from rectangles import window
from written import write

MM = 1e-3


def boxes(sections):
    return [tuple(MM * v for v in s) for s in sections]


def converged(sections, w, h, ends, **more):
    finest = min(min(s[1] - s[0], s[3] - s[2]) for s in boxes(sections)) / 2
    coarse = window(boxes(sections), w * MM, h * MM, ends, finest=finest, **more)
    fine = window(boxes(sections), w * MM, h * MM, ends, finest=finest / 2, order=4, **more)
    some = ~np.eye(len(sections), dtype=bool)
    error = float(np.max(np.abs(coarse[some] / fine[some] - 1)))
    return [[float('%.7g' % v) for v in row] for row in fine], float('%.2g' % error)


# Sections x0, x1, y0, y1 in mm. Two legs: x from leg 1; a coil on leg 2 is seen from its own leg.
LEGS = [
    dict(id='T1', title='P|S on each leg, margins', w=12, h=30, leg=10, yoke=10,
         one=[(1, 3, 1.5, 28.5), (3.3, 5, 1.5, 28.5)], two=[(1, 3, 1.5, 28.5), (3.3, 5, 1.5, 28.5)]),
    dict(id='T2', title='P on one leg, S on the other, unlike heights', w=14, h=24, leg=8, yoke=8,
         one=[(1, 4, 1, 23)], two=[(1, 3.5, 5, 19)]),
    dict(id='T3', title='two chambers a leg, one side part-filled', w=10, h=36, leg=9, yoke=9,
         one=[(0.8, 4.2, 1, 17), (0.8, 4.2, 19, 35)], two=[(0.8, 3.1, 1, 17), (0.8, 4.2, 19, 30)]),
    dict(id='T4', title='three layers a leg, thin, the last part-filled', w=9, h=27, leg=9, yoke=9,
         one=[(1, 1.2, 1, 26), (1.25, 1.45, 1, 26), (1.5, 1.7, 1, 12)],
         two=[(1, 1.2, 1, 26), (1.25, 1.45, 1, 26), (1.5, 1.7, 14, 26)]),
]

# End regions: the tongue as one wall; r0 the radius of a round tongue, stack and yoke those of a real one.
ENDS = [
    dict(id='E1', title='part-height layer offset outside a full one', w=8, h=20, sections=[
        (1, 2.5, 1, 19), (2.7, 3.2, 1, 8)]),
    dict(id='E2', title='two chambers side by side, unlike build', w=8, h=20, sections=[
        (1, 6, 1, 9.5), (1, 4, 10.5, 19)]),
    dict(id='E3', title='three chambers', w=9, h=27, sections=[
        (1, 7, 1, 8.5), (1, 7, 9.5, 17.5), (1, 7, 18.5, 26)]),
    dict(id='E4', title='P|S|P with margins', w=8, h=20, sections=[
        (1, 2.2, 1.5, 18.5), (2.4, 4.4, 2.5, 17.5), (4.6, 5.8, 1.5, 18.5)]),
    dict(id='E5', title='neighbouring thin layers, the second half-filled', w=6, h=16, sections=[
        (1, 1.1, 0.5, 15.5), (1.12, 1.22, 0.5, 15.5), (1.24, 1.34, 0.5, 8)]),
    dict(id='E6', title='coils far above the tongue', w=12, h=20, sections=[
        (5, 7, 2, 18), (7.5, 9.5, 4, 18)]),
    dict(id='E7', title='short coils on a long tongue', w=8, h=40, sections=[
        (1, 3, 17, 23), (3.2, 5.2, 16, 24)]),
    dict(id='E8', title='chambers with one interleaved section', w=10, h=24, sections=[
        (1, 3, 1, 11.5), (3.2, 5.2, 1, 11.5), (5.4, 7.4, 1, 11.5), (1, 7.4, 12.5, 23)]),
]
R0, STACK, YOKE = 8, 16, 8


def main():
    legs, ends = [], []
    for c in LEGS:
        w, outline = c['w'], 2 * c['leg'] + c['w']
        inside = c['one'] + [(w - s[1], w - s[0], s[2], s[3]) for s in c['two']]
        outside = c['one'] + [(-outline - s[1], -outline - s[0], s[2], s[3]) for s in c['two']]
        iron = [(-outline * MM, 0, -c['yoke'] * MM, (c['h'] + c['yoke']) * MM)]
        case = dict(c)
        case['closed'], case['mesh_closed'] = converged(inside, w, c['h'], 'closed')
        case['outline'], case['mesh_outline'] = converged(outside, w, c['h'], 'finite', iron=iron)
        if len(c['one']) > 1:
            case['plane_one'], case['mesh_plane'] = converged(c['one'], w, c['h'], 'open')
        legs.append(case)
    for c in ENDS:
        case = dict(c)
        case['open'], case['mesh_open'] = converged(c['sections'], c['w'], c['h'], 'open')
        # Coils on both faces of a stack of finite height: odd about its middle, so A = 0 there beside the iron.
        n = len(c['sections'])
        both = c['sections'] + [(-STACK - s[1], -STACK - s[0], s[2], s[3]) for s in c['sections']]
        iron = [(-STACK * MM, 0, -YOKE * MM, (c['h'] + YOKE) * MM)]
        case['stack'], case['mesh_stack'] = faces(both, n, c, iron)
        case['round'], case['mesh_round'] = converged(c['sections'], c['w'], c['h'], 'open', axis=R0 * MM)
        ends.append(case)
    origin = ('Finite elements of order 3 and 4 on graded rectangles (scripts/rectangles.py), independent of this program; '
              'mesh: greatest relative change between two meshes. Lengths in mm, x from the leg, H/m (round: H) per turn '
              'squared: twice the energy with +1 ampere-turn in one section and -1 in the other. closed: both coils of a '
              'two-leg core in its window, those of leg 2 mirrored. outline: the same outside the whole core, legs and '
              'yokes a block of iron. plane_one: coils of leg 1 before an endless plane. open: the tongue an endless '
              'plane. stack: coils on both faces of a stack of 16 mm with yokes of 8 mm, for one face. round: before '
              'an endless round tongue of radius r0, free space beyond.')
    write('windows.json', [('{"id"', 2), ('"legs": [', 1), ('"ends": [', 1)], origin=origin, r0=R0, stack=STACK,
          yoke=YOKE, legs=legs, ends=ends)


def faces(both, n, c, iron):
    """lambda of one face with the other face's coil carrying the same turns the other way."""
    from rectangles import Field, graded
    def at(order, divide):
        s = boxes(both)
        finest = min(min(b[1] - b[0], b[3] - b[2]) for b in s) / divide
        xs = [v for b in s for v in b[:2]] + list(iron[0][:2])
        ys = [v for b in s for v in b[2:]] + list(iron[0][2:])
        far = 300 * c['h'] * MM
        f = Field(graded(xs + [-far, far], finest), graded(ys + [-far, far], finest), order, iron,
                  ('x0', 'x1', 'y0', 'y1'))
        loads = [f.load(s[k]) - f.load(s[k + n]) for k in range(n)]
        return f.pair(loads) / 2
    coarse, fine = at(3, 2), at(4, 4)
    some = ~np.eye(n, dtype=bool)
    error = float(np.max(np.abs(coarse[some] / fine[some] - 1)))
    return [[float('%.7g' % v) for v in row] for row in fine], float('%.2g' % error)


if __name__ == '__main__':
    main()
