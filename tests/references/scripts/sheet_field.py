# SPDX-License-Identifier: GPL-3.0-or-later
"""Steps the field in a sheet with hysteresis in time and writes sheet_field.json.

Nothing of the program is used: half a sheet is 60 even slices with the field at their middles (second order), 300
single plays stand for the continuum in each, B = A(sum w p), A an arctangent; a sine drives the sheet through a
resistor and N turns,  e = R i + N A dB/dt,  H_surface = N i / l, and time goes by backward differences of second order
until the cycle repeats. The same sheet with A alone, without plays, is a ladder of resistors and nonlinear capacitors
in ngspice: voltage is field, charge flux density.
Run:  python3 sheet_field.py > ../sheet_field.json      (needs numpy, scipy and ngspice; some minutes)
"""
import json
import math

import numpy as np
from scipy.linalg import solve_banded
from scipy.special import erf

from ngspice import columns

PI = math.pi
MU0 = 4e-7 * PI
N, AREA, PATH, R = 1000.0, 2e-4, 0.1, 600.0
THICK, RHO_E = 0.35e-3, 0.5e-6
MU_I, NU, SLACK, JS = 6000.0, 16000.0, 4.0, 1.5
EDDY = (THICK / 2) ** 2 / RHO_E
SLICES, PLAYS = 60, 300

q = PI * SLACK * NU / MU_I
s = (math.sqrt(q + 4) - math.sqrt(q)) / 2
W0 = s * s
C = 2 * W0 * NU / MU_I
RHO = math.sqrt(2 * SLACK / C)
edges = 5 * RHO * (np.arange(PLAYS + 1) / PLAYS) ** 2
weights = C * RHO * math.sqrt(PI) / 2 * np.diff(erf(edges / RHO))
radii = C * RHO**2 / 2 * -np.diff(np.exp(-((edges / RHO) ** 2))) / weights


def anhysteretic(u, mu):
    x = PI * MU0 * (mu - 1) * u / (2 * JS)
    return MU0 * u + 2 / PI * JS * np.arctan(x), MU0 + MU0 * (mu - 1) / (1 + x * x)


def initial(h):
    u = W0 * h + C * RHO * math.sqrt(PI) / 2 * h * math.erf(h / RHO) - C * RHO**2 / 2 * (1 - math.exp(-(h / RHO) ** 2))
    return float(anhysteretic(u, MU_I / W0)[0])


def harmonics(wave):
    x = np.fft.fft(wave)
    return [20 * math.log10(abs(x[k] / x[1])) for k in (3, 5, 7)]


def moved(plays, h):
    return np.clip(plays, h[:, None] - radii, h[:, None] + radii)


def stepped(f, emf, steps):
    """Slice i from the middle; the surface lies half a slice beyond the last one."""
    plays = np.zeros((SLICES, PLAYS))
    h = np.zeros(SLICES)
    dt = 1 / f / steps
    dx = 1 / SLICES
    source = N / (R * PATH)
    load = N * AREA * source / EDDY  # H_surface = source e - load J, J = EDDY dB_mean/dt
    b = [np.zeros(SLICES), np.zeros(SLICES)]
    rate = []
    for n in range(1, 5 * steps + 1):
        e = math.sqrt(2) * emf * min(1.0, n / (2 * steps)) * math.sin(2 * PI * n / steps)
        end = 1 / (dx / 2 + load)  # conductance from the last slice to the source
        for _ in range(80):
            p = moved(plays, h)
            free = (p - plays != 0) @ weights
            now, slope = anhysteretic(W0 * h + p @ weights, MU_I / W0)
            slope = slope * (W0 + free)
            charge = EDDY * dx * (1.5 * now - 2 * b[0] + 0.5 * b[1]) / dt
            flow = np.diff(h) / dx
            rest = charge.copy()
            rest[:-1] -= flow
            rest[1:] += flow
            rest[-1] += end * (h[-1] - source * e)
            bands = np.zeros((3, SLICES))
            bands[1] = EDDY * dx * 1.5 * slope / dt + 1 / dx * 2
            bands[1, 0] -= 1 / dx
            bands[1, -1] += end - 1 / dx
            bands[0, 1:] = bands[2, :-1] = -1 / dx
            change = solve_banded((1, 1), bands, rest)
            h = h - change
            if np.abs(change).max() < 1e-10 * (1 + np.abs(h).max()):
                break
        plays = moved(plays, h)
        now = anhysteretic(W0 * h + plays @ weights, MU_I / W0)[0]
        rate.append(float(np.mean(1.5 * now - 2 * b[0] + 0.5 * b[1])) / dt)
        b = [now, b[0]]
    return harmonics(rate[-steps:])


def ladder(f, emf):
    cycles, per, slices = 4, 4096, 40
    dx = 1 / slices
    source = N / (R * PATH)
    load = N * AREA * source / EDDY
    lines = [f"Be e 0 V = {math.sqrt(2) * emf * source}*min(1,time*{f / 2})*sin({2 * PI * f}*time)", f"Rl e h{slices} {load + dx / 2}"]
    lines.append(f"Bo o 0 V = v(e)-v(h{slices})")
    for i in range(1, slices + 1):
        b = f"({MU0}*v(h{i})+{2 / PI * JS}*atan({PI * MU0 * (MU_I - 1) / (2 * JS)}*v(h{i})))"
        lines.append(f"C{i} h{i} 0 Q = '{EDDY * dx}*{b}'")
        if i > 1:
            lines.append(f"R{i} h{i - 1} h{i} {dx}")
    net = "sheet\n" + "\n".join(lines) + f"""
.options reltol=1e-6 abstol=1e-6 vntol=1e-6 chgtol=1e-9 method=trap itl4=200
.tran {1 / f / per} {cycles / f} 0 {1 / f / per} uic
.control
run
set wr_singlescale
wrdata out.txt v(o)
quit 0
.endc
.end
"""
    times = (np.arange(per) / per + cycles - 1) / f
    return harmonics(np.interp(times, *columns(net)))


def rows(make, cases):
    return [{"frequency": f, "emf": emf, "h3_h5_h7_dB": make(f, emf)} for f, emf in cases]


if __name__ == "__main__":
    fields = [0.0] + [0.02 * 1e6 ** (i / 160) for i in range(161)]
    print(json.dumps({
        "origin": "own time stepping of 60 slices with 300 plays each, and a ladder of 40 slices without plays in "
                  "ngspice 39; see scripts/sheet_field.py",
        "turns": N, "area": AREA, "path": PATH, "resistance": R, "thickness": THICK, "resistivity": RHO_E,
        "initial_permeability": MU_I, "rayleigh": NU, "saturation": JS, "slack": SLACK,
        "curve": [[h, initial(h)] for h in fields],
        "stepped": rows(lambda f, e: stepped(f, e, 1024),
                        [(200, 0.2), (200, 20), (200, 100), (2000, 2), (2000, 60), (2000, 200)]),
        "ngspice": rows(ladder, [(200, 60), (200, 150), (2000, 200), (2000, 500)]),
    }, indent=1))
