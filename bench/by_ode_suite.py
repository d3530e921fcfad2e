#!/usr/bin/env python3
"""The settled period of the benchmark's loop by SciPy's stiff solver, as anyone would take it from the shelf.

Reads the numbers that `counted_loops numbers` prints; integrates from the cold, period after period, until a period changes
nothing by more than 10 mK; prints milliseconds, the hottest rise [K] and how many periods it took.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import coo_matrix, diags

n = json.load(sys.stdin)
air = n["air"]
capacity = np.array(n["capacity"])[:, 0]
size = len(capacity)


def columns(name, width):
    return np.array(n[name]).reshape(-1, width).T


a, b, g = columns("links", 3)
a, b = a.astype(int), b.astype(int)
conducts = coo_matrix((np.r_[g, g, -g, -g], (np.r_[a, b, a, b], np.r_[a, b, b, a])), (size, size))
sink, sink_g, far, while_on = columns("sinks", 4)
sink = sink.astype(int)
surface, area, table = columns("surfaces", 3)
surface, table = surface.astype(int), table.astype(int)
losses = np.array(n["losses"]).reshape(-1, 65)
line, at_zero, slope = columns("lines", 3)
line = line.astype(int)
drops = np.array(n["drops"]).reshape(-1, 40, 40)
layers = n["layers"]


def balance(on):
    matrix = conducts + diags(np.bincount(sink, sink_g * (1 - while_on + on * while_on), size))
    matrix = (matrix - diags(on * np.bincount(line, slope, size))).tocsr()
    constant = np.bincount(sink, sink_g * far, size) + on * np.bincount(line, at_zero, size)
    return matrix, constant


def drop(k, rise, gripping):
    i, j = min(max(rise / 4, 0), 38.999), min(max(gripping / 4, 0), 38.999)
    p, q = int(i), int(j)
    u, v, d = i - p, j - q, drops[k]
    return (1 - u) * ((1 - v) * d[p, q] + v * d[p, q + 1]) + u * ((1 - v) * d[p + 1, q] + v * d[p + 1, q + 1])


def march(on, seconds, x):
    matrix, constant = balance(on)

    def gains(_, x):
        out = constant - matrix @ x
        rise = np.maximum(x[surface], 1e-9)
        place = 2 * np.sqrt(rise)
        cell = np.minimum(place.astype(int), 63)
        share = place - cell
        h = (1 - share) * losses[table, cell] + share * losses[table, cell + 1]
        np.subtract.at(out, surface, area * h * x[surface])
        volts = []
        for k, (into, other, follows, to, also, share, also_share, amps, alike) in enumerate(n["contacts"]):
            rise = x[int(into)] if other < 0 else 0.5 * (x[int(into)] + x[int(other)])
            volts.append(drop(k, rise, x[int(follows)] if follows >= 0 else 0.0))
            watts = on * amps * alike * volts[-1]
            out[int(to)] += share * watts
            if also >= 0:
                out[int(also)] += also_share * watts
        for i, j, weight, of, faces in n["crossings"]:
            i, j, of = int(i), int(j), int(of)
            t = air + weight * x[i] + (1 - weight) * x[j]
            passes = 2.44e-8 * n["contacts"][of][7] * t / (volts[of] * n["contacts"][of][8])
            passes += faces * 2.64638e-3 * t**1.5 / (t + 245.4 * 10 ** (-12 / t))
            out[i] -= passes * (x[i] - x[j])
            out[j] += passes * (x[i] - x[j])
        for i, j, cold, warm in layers:
            i, j = int(i), int(j)
            passes = cold + (warm - cold) / 64 * 0.5 * (x[i] + x[j])
            out[i] -= passes * (x[i] - x[j])
            out[j] += passes * (x[i] - x[j])
        return out / capacity

    def slopes(_, x):  # of what is straight and of the surfaces; enough for Newton's method within
        by_surface = np.bincount(surface, 1.25 * area * losses[table, 8], size)
        return -diags(1 / capacity) @ (matrix + diags(by_surface))

    return solve_ivp(gains, (0, seconds), x, method="BDF", jac=slopes, rtol=1e-4, atol=1e-3)


start = time.process_time()
x, moved, periods = np.zeros(size), 1.0, 0
while moved > 0.01:
    hot = march(1.0, n["on"], x)
    cool = march(0.0, n["rest"], hot.y[:, -1])
    moved = np.max(np.abs(cool.y[:, -1] - x))
    x = cool.y[:, -1]
    periods += 1
print("%.0f %.3f %d" % (1e3 * (time.process_time() - start), max(np.max(hot.y), np.max(cool.y)), periods))
