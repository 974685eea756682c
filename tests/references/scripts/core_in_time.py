# SPDX-License-Identifier: GPL-3.0-or-later
"""Steps a small circuit with a core in time and writes core_in_time.json.

    EMF -- Rs -- Ls --+--------+-------+
                      core     RL      C      output: the voltage across
    ------------------+--------+-------+

Nothing of the program is used: 400 single plays stand for the continuum of `large_signal.py`, B = A(sum w p), and the
three equations of coil, capacitor and core are stepped by the trapezoidal rule, 1 us after a jump and 10 us else. The
same circuit with A alone, without plays, goes through ngspice.
Run:  python3 core_in_time.py > ../core_in_time.json      (needs numpy and ngspice; some minutes)
"""
import json
import math

import numpy as np

from ngspice import columns

PI = math.pi
MU0 = 4e-7 * PI
N, AREA, PATH, F = 1000.0, 2e-4, 0.1, 20.0
RS, LS, RL, C = 600.0, 0.05, 10e3, 10e-9
MU_I, NU, SLACK, JS = 6000.0, 16000.0, 4.0, 1.5
PLAYS = 400

q = PI * SLACK * NU / MU_I
s = (math.sqrt(q + 4) - math.sqrt(q)) / 2
W0 = s * s
DENSITY = 2 * W0 * NU / MU_I
RHO = math.sqrt(2 * SLACK / DENSITY)
edges = 5 * RHO * (np.arange(PLAYS + 1) / PLAYS) ** 2
erf = np.array([math.erf(x / RHO) for x in edges])
weights = DENSITY * RHO * math.sqrt(PI) / 2 * np.diff(erf)
radii = -DENSITY * RHO**2 / 2 * np.diff(np.exp(-((edges / RHO) ** 2))) / weights


def anhysteretic(u, mu):
    return MU0 * u + 2 / PI * JS * math.atan(PI * MU0 * (mu - 1) * u / (2 * JS))


def initial(h):
    u = (W0 * h + DENSITY * RHO * math.sqrt(PI) / 2 * h * math.erf(h / RHO)
         - DENSITY * RHO**2 / 2 * (1 - math.exp(-((h / RHO) ** 2))))
    return anhysteretic(u, MU_I / W0)


class Plays:
    def __init__(self):
        self.p = np.zeros(PLAYS)

    def flux(self, h):
        return anhysteretic(W0 * h + weights @ np.clip(self.p, h - radii, h + radii), MU_I / W0)

    def go(self, h):
        self.p = np.clip(self.p, h - radii, h + radii)


class Curve:
    def flux(self, h):
        return anhysteretic(h, MU_I)

    def go(self, h):
        pass


# What is driven: EMF, V, as a function of time, s, with the times of its jumps, and how long.
def sine(t):
    return math.sin(2 * PI * F * t)


PEAK = 14 * math.sqrt(2)
SIGNALS = {
    "step": (lambda t: 10.0, [0.0], 0.2),
    "square": (lambda t: 10.0 if int(2 * F * t + 1e-9) % 2 == 0 else -10.0, [k / (2 * F) for k in range(8)], 0.2),
    "burst": (lambda t: PEAK * sine(t) if t < 4 / F - 1e-9 else 0.0, [], 0.4),
    "jump": (lambda t: PEAK * sine(t) * (0.1 if t < 2 / F - 1e-9 else 1.0), [], 0.3),
}
SPICE = {
    "step": "Ve e 0 dc 0 pwl(0 10 1 10)",
    "burst": f"Ve e f sin(0 {PEAK} {F})\nVf f 0 sin(0 {-PEAK} {F} {4 / F})",
    "jump": f"Ve e f sin(0 {0.1 * PEAK} {F})\nVf f 0 sin(0 {0.9 * PEAK} {F} {2 / F})",
}
ASKED = {name: [1e-5 * (signal[2] / 1e-5) ** (k / 120) for k in range(121)] if name == "step" else
         [signal[2] * k / 240 + 1e-4 for k in range(240)] for name, signal in SIGNALS.items()}


def stepped(name, core):
    emf, jumps, end = SIGNALS[name]
    fine, coarse, while_fine = 1e-6, 1e-5, 3e-3
    times = [0.0]
    stops = sorted(set(jumps + [end, 2 / F, 4 / F]))
    while times[-1] < end - 1e-12:
        t = times[-1]
        near = any(-1e-12 < t - j < while_fine for j in jumps)
        ahead = min(x for x in stops if x > t + 1e-9)
        times.append(min(t + (fine if near else coarse), ahead))
    current = volts = h = b = 0.0
    slope = MU0 * MU_I
    story = [(0.0, 0.0, 0.0)]
    for t0, t1 in zip(times, times[1:]):
        dt = t1 - t0
        e0, e1 = emf(t0), emf(t1 - 1e-9 if any(abs(t1 - j) < 1e-9 for j in jumps) else t1)

        def after(x):
            v = 2 * N * AREA * (core.flux(x) - b) / dt - volts
            i = (LS / dt * current + (e0 + e1 - RS * current - volts - v) / 2) / (LS / dt + RS / 2)
            return v, i

        def off(x):  # charge on the capacitor, too much
            v, i = after(x)
            flows = (current + i - (volts + v) / RL - PATH / N * (h + x)) / 2
            return C * (v - volts) - dt * flows

        steep = (C + dt / 2 / RL + dt / 2 / 2 / (LS / dt + RS / 2)) * 2 * N * AREA / dt
        x0, y0 = h, off(h)
        x1 = h - y0 / (steep * slope + dt / 2 * PATH / N)
        lower, upper = -math.inf, math.inf
        for _ in range(80):
            y1 = off(x1)
            if y1 > 0:
                upper = min(upper, x1)
            else:
                lower = max(lower, x1)
            if y1 == y0 or abs(x1 - x0) < 1e-11 * (1 + abs(x1)):
                break
            x2 = x1 - y1 * (x1 - x0) / (y1 - y0)
            if not lower < x2 < upper:
                x2 = (lower + upper) / 2 if math.isfinite(lower + upper) else x1 + 2 * (x1 - x0)
            x0, y0, x1 = x1, y1, x2
        slope = max(MU0, (core.flux(x1) - b) / (x1 - h)) if x1 != h else slope
        volts, current = after(x1)
        b, h = core.flux(x1), x1
        core.go(h)
        story.append((volts, h * PATH / N, current))
    story = np.array(story)
    return [[float(np.interp(t, times, story[:, k])) for t in ASKED[name]] for k in range(3)]


def spiced(name):
    end, per = SIGNALS[name][2], 2e-6
    # The core as a flux: a current source makes the magnetising current m from the integral of the voltage.
    h = f"({N}*v(m)/{PATH})"
    b = f"({MU0}*{h}+{2 / PI * JS}*atan({PI * MU0 * (MU_I - 1) / (2 * JS)}*{h}))"
    net = f"""core
{SPICE[name]}
Rs e a {RS}
Ls a c {LS}
Rl c 0 {RL}
Cl c 0 {C}
Bm c 0 I = v(m)
Gm 0 m c 0 1
Cm m 0 Q = '{N * AREA}*{b}'
.options reltol=1e-6 abstol=1e-13 vntol=1e-10 chgtol=1e-16 method=trap
.tran {per} {end} 0 {per} uic
.control
run
set wr_singlescale
wrdata out.txt v(c) v(m) i(Ls)
quit 0
.endc
.end
"""
    times, *waves = columns(net)
    return [[float(np.interp(t, times, wave)) for t in ASKED[name]] for wave in waves]


def row(name, told):
    return {"signal": name, "time": ASKED[name], "output": told[0], "magnetising": told[1], "source": told[2]}


fields = [0.0] + [0.02 * 1e6 ** (i / 160) for i in range(161)]
print(json.dumps({
    "origin": "own time stepping with 400 plays, and ngspice 39 transient without plays; see scripts/core_in_time.py",
    "turns": N, "area": AREA, "path": PATH, "frequency": F, "source_resistance": RS, "leakage": LS, "load": RL,
    "capacitance": C, "initial_permeability": MU_I, "rayleigh": NU, "saturation": JS, "slack": SLACK,
    "curve": [[h, initial(h)] for h in fields],
    "step_V": 10.0, "peak_V": PEAK,
    "stepped": [row(name, stepped(name, Plays())) for name in SIGNALS],
    "ngspice": [row(name, spiced(name)) for name in SPICE],
}))
