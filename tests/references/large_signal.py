# SPDX-License-Identifier: GPL-3.0-or-later
"""Steps a sine through a resistor and a core with hysteresis in time and writes large_signal.json.

Nothing of the program is used: 400 single plays stand for the continuum, B = A(sum w p), A an arctangent, and
e - R i = N A dB/dt is stepped by the trapezoidal rule until the cycle repeats. The same circuit with A alone, without
plays, goes through ngspice (`circuit` below); its transient is analysed here by projection over one cycle.
Run:  python3 large_signal.py > large_signal.json      (needs ngspice; some minutes)
"""
import cmath
import json
import math

from scripts.ngspice import columns

PI = math.pi
MU0 = 4e-7 * PI
N, AREA, PATH, R, F = 1000.0, 2e-4, 0.1, 600.0, 20.0
MU_I, NU, SLACK, JS = 6000.0, 16000.0, 4.0, 1.5
STEPS, PLAYS = 1024, 400

q = PI * SLACK * NU / MU_I
s = (math.sqrt(q + 4) - math.sqrt(q)) / 2
W0 = s * s
C = 2 * W0 * NU / MU_I
RHO = math.sqrt(2 * SLACK / C)
# Slack from 0 to 5 rho, closer near 0: each play stands for its stretch of the density, with that stretch's mean slack.
radii, weights = [], []
for i in range(PLAYS):
    low, high = 5 * RHO * (i / PLAYS) ** 2, 5 * RHO * ((i + 1) / PLAYS) ** 2
    weight = C * RHO * math.sqrt(PI) / 2 * (math.erf(high / RHO) - math.erf(low / RHO))
    moment = C * RHO**2 / 2 * (math.exp(-(low / RHO) ** 2) - math.exp(-(high / RHO) ** 2))
    weights.append(weight)
    radii.append(moment / weight)


def anhysteretic(u, mu):
    return MU0 * u + 2 / PI * JS * math.atan(PI * MU0 * (mu - 1) * u / (2 * JS))


def initial(h):
    u = W0 * h + C * RHO * math.sqrt(PI) / 2 * h * math.erf(h / RHO) - C * RHO**2 / 2 * (1 - math.exp(-(h / RHO) ** 2))
    return anhysteretic(u, MU_I / W0)


def harmonics(wave):
    x = [sum(v * cmath.exp(-2j * PI * k * n / len(wave)) for n, v in enumerate(wave)) for k in range(8)]
    return [20 * math.log10(abs(x[k] / x[1])) for k in (3, 5, 7)]


def stepped(emf):
    plays = [0.0] * PLAYS
    dt = 1 / F / STEPS
    h = b = drive = 0.0
    volts = []
    slope = MU0 * MU_I

    def flux(x):
        u = W0 * x
        for r, w, p in zip(radii, weights, plays):
            u += w * (x - r if p < x - r else x + r if p > x + r else p)
        return anhysteretic(u, MU_I / W0)

    for n in range(1, 4 * STEPS + 1):
        t = n * dt
        e = math.sqrt(2) * emf * min(1.0, t * F / 2) * math.sin(2 * PI * F * t)

        def off(x):
            return N * AREA * (flux(x) - b) - dt / 2 * (e - R * x * PATH / N + drive)

        lower, upper = -math.inf, math.inf
        x0, y0 = h, off(h)
        x1 = h - y0 / (N * AREA * slope + dt / 2 * R * PATH / N)
        for _ in range(60):
            y1 = off(x1)
            if y1 > 0:
                upper = min(upper, x1)
            else:
                lower = max(lower, x1)
            if y1 == y0 or abs(x1 - x0) < 1e-12 * (1 + abs(x1)):
                break
            x2 = x1 - y1 * (x1 - x0) / (y1 - y0)
            if not lower < x2 < upper:
                x2 = (lower + upper) / 2 if math.isfinite(lower + upper) else x1 + 2 * (x1 - x0)
            x0, y0, x1 = x1, y1, x2
        slope = max(MU0, (flux(x1) - b) / (x1 - h)) if x1 != h else slope
        h = x1
        b = flux(h)
        plays = [h - r if p < h - r else h + r if p > h + r else p for r, p in zip(radii, plays)]
        drive = e - R * h * PATH / N
        volts.append(drive)
    return harmonics(volts[-STEPS:])


def circuit(emf):
    cycles, per = 3, 4096
    peak = math.sqrt(2) * emf
    h = f"({N}*v(c)/{PATH})"
    b = f"({MU0}*{h}+{2 / PI * JS}*atan({PI * MU0 * (MU_I - 1) / (2 * JS)}*{h}))"
    net = f"""core
Ve e 0 dc 0 sin(0 {peak} {F} 0 0 90)
Bi 0 c I = v(e) - {R}*v(c)
C1 c 0 Q = '{N * AREA}*{b}'
Bo o 0 V = v(e) - {R}*v(c)
.options reltol=1e-7 abstol=1e-15 vntol=1e-12 chgtol=1e-18 method=trap
.tran {1 / F / per} {cycles / F} 0 {1 / F / per} uic
.control
run
linearize v(o)
set wr_singlescale
wrdata out.txt v(o)
quit 0
.endc
.end
"""
    data = list(zip(*columns(net)))
    wave, i = [], 0
    for n in range(per):
        t = n / per / F + (cycles - 1) / F
        while i + 2 < len(data) and data[i + 1][0] < t:
            i += 1
        (t0, v0), (t1, v1) = data[i], data[i + 1]
        wave.append(v0 + (v1 - v0) * (t - t0) / (t1 - t0))
    return harmonics(wave)


fields = [0.0] + [0.02 * 1e6 ** (i / 160) for i in range(161)]
print(json.dumps({
    "origin": "own time stepping with 400 plays, and ngspice 39 transient without plays; see large_signal.py",
    "turns": N, "area": AREA, "path": PATH, "resistance": R, "frequency": F,
    "initial_permeability": MU_I, "rayleigh": NU, "saturation": JS, "slack": SLACK,
    "curve": [[h, initial(h)] for h in fields],
    "stepped": [{"emf": e, "h3_h5_h7_dB": stepped(e)} for e in (0.1, 1.0, 6.0, 14.0, 24.0)],
    "ngspice": [{"emf": e, "h3_h5_h7_dB": circuit(e)} for e in (6.0, 14.0, 20.0, 24.0)],
}, indent=1))
