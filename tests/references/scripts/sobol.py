# SPDX-License-Identifier: GPL-3.0-or-later
# Values of tests/references/sobol.json: points of Sobol's sequence and normal quantiles by Debian's python3-scipy 1.10.1.
#   python3 tests/references/scripts/sobol.py >tests/references/sobol.json
import json

from scipy.stats import norm, qmc

points, dimensions = [0, 1, 2, 3, 7, 100, 511, 1000, 1023], [0, 1, 2, 5, 17, 40, 99, 128, 160]
shares = (1e-9, 1e-4, 0.001, 0.02275, 0.1, 0.3, 0.5, 0.6, 0.9, 0.975, 0.999, 0.9999999)
all_points = qmc.Sobol(161, scramble=False, bits=32).random_base2(10)
print(json.dumps({
    "source": "scipy.stats.qmc.Sobol(161, scramble=False, bits=32) of Debian's python3-scipy 1.10.1, values at some "
              "points and dimensions (both from 0); scipy.stats.norm.ppf",
    "points": points, "dimensions": dimensions,
    "values": [[float(all_points[i, d]) for d in dimensions] for i in points],
    "normal_quantiles": [[p, float(norm.ppf(p))] for p in shares],
}, indent=1))
