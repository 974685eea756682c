# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs a netlist through ngspice, used by the others."""
import os
import subprocess
import tempfile


def columns(net):
    """The columns of the table that `net` writes with wrdata into out.txt; RuntimeError with ngspice's words if none."""
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, "net.cir"), "w") as file:
            file.write(net)
        done = subprocess.run(["ngspice", "-b", "net.cir"], cwd=folder, capture_output=True, text=True)
        table = os.path.join(folder, "out.txt")
        if not os.path.exists(table):
            raise RuntimeError(done.stdout + done.stderr)
        with open(table) as file:
            rows = [[float(word) for word in line.split()] for line in file]
    return [list(column) for column in zip(*rows)]
