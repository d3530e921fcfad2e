#!/usr/bin/env python3
"""The settled period of the benchmark's loop by a circuit simulator (ngspice), as anyone would draw it: rises are volts,
heat is current, capacities are capacitors, conductances resistors; what is curved are behavioural sources.

Reads the numbers that `counted_loops numbers` prints; runs the circuit from the cold with a relative tolerance of 1e-4 and
finds after how many periods one changes nothing by more than 10 mK; runs it once more for as many, and prints milliseconds
of the processor without starting and reading the deck, those of starting and reading, the hottest rise [K] and how many
periods it took.
"""
import json
import os
import re
import resource
import subprocess
import sys
import tempfile

import numpy as np

RELATIVE, KELVIN, WATTS, JOULES = 1e-4, 1e-3, 1e-4, 1e-3  # tolerances
SWITCHED = 1e-3  # s, from no current to all of it
PERIODS = 20  # looked ahead; more than are needed
ENOUGH = 0.01  # K, that a period still changes


def terms(points):
    """x, y, x, y, ... as a table of the simulator, on lines that it reads"""
    out = ["%.12g,%.12g" % p for p in points]
    return ",\n+ ".join(", ".join(out[i:i + 4]) for i in range(0, len(out), 4))


def deck(n):
    """the circuit; node x<i> is the rise of place i, node on is 1 while current flows, node v<k> the drop of a contact"""
    air, out = n["air"], ["* heat of a loop as a circuit"]

    def into(node, watts):
        out.append("Bq%d 0 x%d I=%s" % (len(out), node, watts))

    out.append("Von on 0 PULSE(0 1 0 %g %g %.12g %.12g)" % (SWITCHED, SWITCHED, n["on"] - SWITCHED, n["on"] + n["rest"]))
    for i, (c,) in enumerate(n["capacity"]):
        out.append("C%d x%d 0 %.12g" % (i, i, c))
    for k, (a, b, g) in enumerate(n["links"]):
        out.append("Rl%d x%d x%d %.12g" % (k, a, b, 1 / g))
    for k, (a, g, far, while_on) in enumerate(n["sinks"]):
        if g > 0:
            into(int(a), "%.12g*%s(%.12g-v(x%d))" % (g, "v(on)*" if while_on else "", far, a))
    rises = [(i / 2) ** 2 for i in range(65)]
    losses = np.array(n["losses"]).reshape(-1, 65)
    for a, area, table in n["surfaces"]:
        place = "2*sqrt(max(v(x%d),1e-9))" % a
        loss = terms([(2 * np.sqrt(r), h) for r, h in zip(rises, losses[int(table)])])
        into(int(a), "-%.12g*v(x%d)*pwl(%s,\n+ %s)" % (area, a, place, loss))
    for a, at_zero, slope in n["lines"]:
        into(int(a), "v(on)*(%.12g+%.12g*v(x%d))" % (at_zero, slope, a))
    drops = np.array(n["drops"]).reshape(-1, 40, 40)
    for k, (a, other, follows, to, also, share, also_share, amps, alike) in enumerate(n["contacts"]):
        rise = "v(x%d)" % a if other < 0 else "0.5*(v(x%d)+v(x%d))" % (a, other)

        def by_rise(column):
            return "pwl(%s,\n+ %s)" % (rise, terms([(4 * i, d) for i, d in enumerate(drops[k][:, column])]))

        if follows < 0:
            volts = by_rise(0)
        else:  # between three warmths of what grips, by a parabola
            at, f = (0, 20, 39), "v(x%d)" % follows
            volts = "+\n+ ".join(
                "(%s)*%s" % ("*".join("((%s-%d)/%d)" % (f, 4 * o, 4 * (j - o)) for o in at if o != j), by_rise(j))
                for j in at)
        out.append("Bv%d v%d 0 V=%s" % (k, k, volts))
        for node, part in ((to, share), (also, also_share)):
            if node >= 0:
                into(int(node), "%.12g*v(on)*v(v%d)" % (part * amps * alike, k))
    for a, b, weight, of, faces in n["crossings"]:
        t = "(%.12g+%.12g*v(x%d)+%.12g*v(x%d))" % (air, weight, a, 1 - weight, b)
        contact = n["contacts"][int(of)]
        passes = "2.44e-8*%.12g*%s/v(v%d)" % (contact[7] / contact[8], t, of)
        if faces > 0:
            passes += "+%.12g*%s*sqrt(%s)/(%s+245.4*exp(-27.63102111592855/%s))" % (faces * 2.64638e-3, t, t, t, t)
        out.append("Bc%d x%d x%d I=(%s)*(v(x%d)-v(x%d))" % (len(out), a, b, passes, a, b))
    for a, b, cold, warm in n["layers"]:
        by_mean = "%.12g+%.12g*(v(x%d)+v(x%d))" % (cold, (warm - cold) / 64 * 0.5, a, b)
        out.append("Bc%d x%d x%d I=(%s)*(v(x%d)-v(x%d))" % (len(out), a, b, by_mean, a, b))
    out.append(".options reltol=%g vntol=%g abstol=%g chgtol=%g trtol=1 method=gear" % (RELATIVE, KELVIN, WATTS, JOULES))
    return "\n".join(out) + "\n"


def run(circuit, seconds, folder):
    """times and rises of a run, and the processor's milliseconds"""
    file, raw = os.path.join(folder, "deck"), os.path.join(folder, "raw")
    with open(file, "w") as f:
        f.write("%s.control\nset filetype=binary\ntran %g %.12g\nwrite %s\nquit\n.endc\n.end\n"
                % (circuit, seconds / 100, seconds, raw))
    before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
    said = subprocess.run(["ngspice", "-b", file], capture_output=True, text=True, check=False)
    took = 1e3 * (resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before)
    if not os.path.exists(raw):
        sys.exit("no answer of ngspice:\n" + said.stdout + said.stderr)
    with open(raw, "rb") as f:
        content = f.read()
    os.remove(raw)
    head, data = content.split(b"Binary:\n", 1)
    names = re.findall(rb"^\t\d+\t(\S+)", head, re.M)
    table = np.frombuffer(data, dtype=float).reshape(-1, len(names))
    place = {name.decode(): i for i, name in enumerate(names)}
    columns = [place["v(x%d)" % i] if "v(x%d)" % i in place else place["x%d" % i] for i in range(len(n["capacity"]))]
    return table[:, place["time"]], table[:, columns], took


n = json.load(sys.stdin)
circuit, period = deck(n), n["on"] + n["rest"]
with tempfile.TemporaryDirectory() as folder:
    times, rises, _ = run(circuit, PERIODS * period, folder)
    ends = np.array([[np.interp(k * period, times, column) for column in rises.T] for k in range(PERIODS + 1)])
    moved = np.max(np.abs(np.diff(ends, axis=0)), axis=1)
    settled = np.flatnonzero(moved <= ENOUGH)
    if not len(settled):
        sys.exit("not settled after %d periods" % PERIODS)
    periods = int(settled[0]) + 1
    times, rises, took = run(circuit, periods * period, folder)
    starting = run(circuit, 1e-6, folder)[2]
    hottest = np.max(rises[times >= (periods - 1) * period])
print("%.0f %.0f %.3f %d" % (took - starting, starting, hottest, periods))
