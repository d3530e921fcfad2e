"""Rows of fifty digits: python3 rows.py > rows.csv

Each law is written here anew from its equation and evaluated by mpmath with fifty digits at inputs that are doubles,
given in hexadecimal. A row has the law, its inputs, the value as the sum of two doubles, and the relative error that is
allowed. Constants are the doubles that a program writes for them.

A law is either held to all digits, 1e-14 at any inputs, because its equation can be evaluated without loss; or to
1e-14 plus its condition number times four roundings (each input and result is rounded once), where the result hangs on
rounded numbers inside. The condition number is worked out here by moving each input by 1e-20 of itself, `constants` adds the terms of a sum of
printed coefficients. A few have an error of their own, which stands beside them. What marches or iterates is held to the
accuracy that its public comment states, which stands beside it too; marches.py follows conductors in time.
"""
import math
import random

from mpmath import (acosh, asinh, besseli, besselj, besseljzero, besselk, cbrt, cos, cosh, coth, diff, eig, ellipe,
                    ellipk, erfc, exp, expm, expm1, eye, j, log, log10, lu_solve, matrix, mp, mpc, mpf, pi, quad, sin, sinh,
                    sqrt, tanh, zeta)

import marches

mp.dps = 50
EPS = 2.0**-52
ALL_DIGITS = 1e-14
rows = []


class L:  # evenly in the logarithm
    def __init__(self, low, high):
        self.low, self.high = low, high

    def draw(self, dice):
        return self.low * (self.high / self.low) ** dice.random()


class U:  # evenly
    def __init__(self, low, high):
        self.low, self.high = low, high

    def draw(self, dice):
        return self.low + (self.high - self.low) * dice.random()


class C:  # one of these
    def __init__(self, *of):
        self.of, self.low, self.high = of, of[0], of[-1]

    def draw(self, dice):
        return dice.choice(self.of)


class Above:  # another input and a share of it, from tiny to large
    def __init__(self, which, low, high):
        self.which, self.low, self.high = which, low, high

    def draw(self, dice):
        return self.low * (self.high / self.low) ** dice.random()


class Plus(Above):  # another input and something added to it
    pass


def resolved(axes, drawn):
    out = []
    for axis, x in zip(axes, drawn):
        if isinstance(axis, Plus):
            x = out[axis.which] + x
        elif isinstance(axis, Above):
            x = out[axis.which] * (1.0 + x)
        out.append(float(x))
    return out


def condition(f, x):
    step, value, total = mpf(10) ** -20, f(*map(mpf, x)), mpf(0)
    for i, xi in enumerate(x):
        if xi == 0.0:
            continue
        moved = [mpf(v) for v in x]
        moved[i] *= 1 + step
        total += abs((f(*moved) - value) / (step * value))
    return total


def law(name, f, *axes, n=10, more=(), allowed=ALL_DIGITS, conditioned=False, constants=None, where=lambda *x: True,
        marched=False):
    """Rows of a law. `allowed` may be a function of value and inputs; what is `marched` is kept as one double."""
    dice = random.Random(name)
    ends = [resolved(axes, [a.low for a in axes]), resolved(axes, [a.high for a in axes])] if axes else []
    points = [p for p in ends if where(*p)] + [list(map(float, p)) for p in more]
    tries = 0
    while axes and len(points) < n + 2 + len(more) and tries < 4000:
        tries += 1
        p = resolved(axes, [a.draw(dice) for a in axes])
        if where(*p):
            points.append(p)
    for x in points:
        value = f(*map(mpf, x))
        high = float(value)
        low = float(value - mpf(high)) if not marched else 0.0
        hangs = condition(f, x) if conditioned and value != 0 else mpf(0)
        if constants and value != 0:
            hangs += constants(*map(mpf, x)) / value
        bound = float(allowed(value, x) if callable(allowed) else allowed) + 4 * EPS * float(hangs)
        rows.append([name, " ".join(float.hex(v) for v in x), float.hex(high), float.hex(low), "%.2g" % bound])


# ---- constants as the library writes them
T20 = mpf(293.15)
LORENZ = mpf(2.44e-8)
SIGMA = mpf(5.670374419e-8)
MU0 = mpf(4e-7) * pi
GAMMA = mp.euler
HOUR = mpf(3600)
Z = {"index": lambda C: (4 * C - 1) / (4 * C - 4) + mpf(0.615) / C}

# ---- arcs: Q = k U I / v; U = a + b L + c I
law("heat_input", lambda k, u, i, v: k * u * i / v, L(1e-9, 1), L(1e-3, 100), L(1e-6, 1e5), L(1e-6, 10))
law("arc_voltage_at", lambda a, b, c, l, i: a + b * l + c * i, U(5, 40), L(1, 3e3), L(1e-6, 0.1), L(1e-6, 0.1),
    L(1e-6, 1e3))
law("arc_length_at", lambda a, b, c, v, i: (v - a - c * i) / b, U(5, 40), L(1, 3e3), L(1e-6, 0.1), U(10, 80),
    L(1e-6, 1e3), conditioned=True)

# ---- bolts: F = T/(K d); (pi/4)(d - h p)^2 of ISO 898-1, ASME B1.1
law("bolt_force", lambda t, k, d: t / (k * d), L(1e-9, 1e4), U(0.05, 1), L(1e-4, 0.1))
for which, depth in (("metric", 0.9382), ("inch", 0.9743)):
    law(which + "_stress_area", lambda d, p, h=mpf(depth): pi / 4 * (d - h * p) ** 2, L(1e-3, 0.1), L(1e-4, 0.1),
        where=lambda d, p: p < d, conditioned=True, more=[(0.0100000001, 0.01), (1, 1e-9)])
# settling: pace = range/(softening - T); decades + pace log10(1 + hours 10^(-decades/pace))
law("settling_pace", lambda t, soft: (soft - T20) / (soft - t), U(200, 450), U(455, 700))
law("settled_decades",
    lambda reached, pace, t: reached + pace * log(1 + t / HOUR * mpf(10) ** (-reached / pace)) / log(10), C(0.0),
    L(0.1, 149), L(1e-9, 1e12), n=16, more=[(0, 1, 1e-6), (3, 1, 1e-3), (0.5, 2, 3600), (7, 3, 1e9)])

# ---- burn-off: v = a I + b L I^2 and its positive root
law("melting_speed", lambda a, b, i, l: a * i + b * l * i * i, L(1e-5, 1e-2), L(1e-7, 1e-2), L(1e-6, 1e3), L(1e-6, 0.1))
law("current_for_feed", lambda a, b, v, l: (sqrt(a * a + 4 * b * l * v) - a) / (2 * b * l), L(1e-5, 1e-2),
    L(1e-12, 1e-2), L(1e-6, 10), L(1e-6, 0.1))
law("wire_length_per_mass", lambda d, w: 4 / (pi * d * w * w), L(1e2, 2e4), L(1e-6, 0.1))

# ---- relaxation by the codes: CEB-FIP Model Code 2.3.4.5, EN 1992-1-1 3.3.2(7), Magura
TABLE = [(0.5, 0.0), (0.6, 0.025), (0.7, 0.05), (0.8, 0.09)]


def code_table(mu):
    for (x0, y0), (x1, y1) in zip(TABLE, TABLE[1:]):
        if mu <= mpf(x1) or x1 == 0.8:
            return mpf(y0) + (mpf(y1) - mpf(y0)) * (mu - mpf(x0)) / (mpf(x1) - mpf(x0))


law("model_code_relaxation", lambda mu, t: code_table(mu) * (t / HOUR / 1000) ** mpf(0.12), U(0.55, 0.8), L(1, 1e9),
    conditioned=True)
law("eurocode_relaxation",
    lambda mu, t: mpf(1e-5) * mpf(5.39) * 8 * exp(mpf(6.7) * mu) * (t / HOUR / 1000) ** (mpf(0.75) * (1 - mu)),
    U(0.5, 0.8), L(1e-3, 1e9), conditioned=True)
law("logarithmic_relaxation", lambda mu, t, y: log10(t / HOUR) * (mu / y - mpf(0.55)) / 10, U(0.55, 0.8), L(3700, 1e9),
    U(0.7, 1), more=[(0.7, 3600.001, 0.85)], constants=lambda mu, t, y: log10(t / HOUR) * (mu / y + mpf(0.55)) / 10)

# ---- helical springs, Shigley 10-3 to 10-13, 10-43 to 10-51
wahl = lambda c: (4 * c - 1) / (4 * c - 4) + mpf(0.615) / c
law("wahl_factor", wahl, L(1.5, 1e3), more=[(1 + 1e-12,), (1.001,)])
law("bergstrasser_factor", lambda c: (4 * c + 2) / (4 * c - 3), L(1.5, 1e3), more=[(1 + 1e-12,), (1.001,)])
inner = lambda c: (4 * c * c - c - 1) / (4 * c * (c - 1))
law("inner_bending_factor", inner, L(1.5, 1e3), more=[(1 + 1e-12,), (1.001,)])
law("outer_bending_factor", lambda c: (4 * c * c + c - 1) / (4 * c * (c + 1)), L(1.5, 1e3), more=[(1 + 1e-12,)])
law("compression_rate", lambda g, d, D, n: g * d**4 / (8 * D**3 * n), L(1e9, 1e12), L(1e-6, 0.2), Above(1, 1e-3, 900),
    L(1e-3, 1e6))
law("compression_stress", lambda f, d, D: wahl(D / d) * 8 * f * D / (pi * d**3), L(1e-9, 1e9), L(1e-6, 0.2),
    Above(1, 0.5, 900), more=[(100, 0.003, 0.00300003)], conditioned=True)
law("compression_load", lambda t, d, D: t * pi * d**3 / (8 * D * wahl(D / d)), L(1, 1e12), L(1e-6, 0.2),
    Above(1, 0.5, 900), conditioned=True)
law("compression_force", lambda k, free, solid, at: k * (free - at), L(1e-3, 1e9), U(0.05, 0.1), U(0.01, 0.02),
    U(0.021, 0.049), more=[(1e3, 0.1, 0.02, 0.0999999999)])
stability = lambda E, G: 2 * pi**2 * (E - G) / (2 * G + E)
law("longest_stable_spring", lambda D, E, G: sqrt(stability(E, G)) * D / mpf(0.5), L(1e-5, 1), U(1e11, 3e11),
    U(2e10, 9e10))


def buckled(L0, D, E, G):
    return L0 / 2 * E / (E - G) * (1 - sqrt(1 - stability(E, G) / (L0 / D) ** 2))


law("buckling_deflection", buckled, L(0.5, 100), L(1e-5, 0.1), U(1.5e11, 3e11), U(5e10, 9e10), n=14,
    more=[(1, 1e-6, 2.07e11, 7.93e10), (1, 1e-8, 2.07e11, 7.93e10), (0.2, 0.02, 2.07e11, 7.93e10)],
    where=lambda L0, D, E, G: L0 / D > 4)
law("torsion_rate", lambda E, d, D, n: E * d**4 / (mpf(2 * 10.8) * pi * D * n), L(1e9, 1e12), L(1e-6, 0.2),
    Above(1, 0.1, 900), L(1e-3, 1e6))
law("torsion_stress", lambda M, d, D: inner(D / d) * 32 * M / (pi * d**3), L(1e-9, 1e9), L(1e-6, 0.2),
    Above(1, 0.5, 900), conditioned=True)

# ---- conductors: rho20 (1 + a (T - 20 degC)) (1 + k)/A
law("conductor_resistance", lambda r, a, A, k, t: r * (1 + a * (t - T20)) * (1 + k) / A, L(1e-9, 1e-5),
    L(1e-6, 6e-3), L(1e-12, 1), U(0, 1), U(233, 1300))
law("damaged_conductor", lambda r, whole, miss, dam: r * ((whole - dam) + dam / (1 - miss)), L(1e-6, 1), U(1, 100),
    U(0, 0.99), L(1e-9, 1), more=[(1e-3, 10, 1e-12, 10), (1e-3, 10, 0.999999, 1e-6)])
law("free_air_coefficient", lambda d: mpf(0.21) / d ** mpf(0.6) + mpf(3.94), L(1e-6, 10))
law("ambient_factor", lambda lim, base, air: sqrt((lim - air) / (lim - base)), U(330, 380), U(273, 320), U(200, 329),
    more=[(358.15, 298.15, 358.149999)])
law("equal_heating_current", lambda i, d1, d2: i * sqrt(d1 / d2), L(1e-9, 1e5), L(1e-6, 600), L(1e-6, 600),
    more=[(100, 599.9999999, 600)])

# ---- contacts: (rho1 + rho2)/(4 a); a = sqrt(F/(pi H)); Greenwood's pair sum; Hertz
law("constriction_resistance", lambda a, b, r: (a + b) / (4 * r), L(1e-9, 1e-3), L(1e-9, 1e-3), L(1e-9, 1))
law("spot_radius", lambda f, h: sqrt(f / (pi * h)), L(1e-12, 1e6), L(1e6, 1e12))


def two_spots(rho, x1, y1, a1, x2, y2, a2):
    apart, total = sqrt((x1 - x2) ** 2 + (y1 - y2) ** 2), a1 + a2
    return rho * (1 / (2 * total) + 2 * a1 * a2 / apart / (pi * total**2))


law("two_spots", two_spots, L(1e-8, 1e-3), U(0, 1e-3), U(0, 1e-3), L(1e-9, 1e-5), U(2e-3, 3e-3), U(0, 1e-3),
    L(1e-9, 1e-5))
law("elastic_spot_radius", lambda f, r, e: cbrt(3 * f * r / (4 * e)), L(1e-12, 1e6), L(1e-9, 1), L(1e6, 1e13))
law("contact_modulus", lambda e1, n1, e2, n2: 1 / ((1 - n1**2) / e1 + (1 - n2**2) / e2), L(1e8, 1e12), U(0, 0.5),
    L(1e8, 1e12), U(0, 0.5))
law("film_resistance", lambda s, a: s / a, L(1e-15, 1), L(1e-12, 1))
law("force_law_conductance", lambda k, n, f: (mpf(0.102) * f) ** n / (mpf(1e-6) * k), L(1, 1e6), U(0.1, 1.5),
    L(1e-12, 1e9), conditioned=True)
law("force_for_resistance", lambda r, k, n: (mpf(1e-6) * k / r) ** (1 / n) / mpf(0.102), L(1e-9, 1), L(1, 1e5),
    U(0.1, 1.5), conditioned=True)
law("untouched_resistance_factor", lambda s, n: (s / mpf(1.0 / 3.0)) ** (-n), L(1e-9, 0.33), U(0.1, 1.5),
    conditioned=True)
law("gap_radiation_conductance", lambda A, e1, e2, t: 4 * SIGMA * t**3 * A * e1 * e2 / (e1 + e2 - e1 * e2),
    L(1e-9, 1), L(1e-6, 1), L(1e-6, 1), U(100, 1500))
law("sheet_resistance", lambda rho, a, t, reach: rho / (4 * a) + rho / (2 * pi * t) * (log(reach / (4 * t)) + GAMMA),
    L(1e-8, 1e-3), L(1e-7, 1e-4), L(2.1e-4, 0.1), Above(2, 1.1, 1e6))
law("bar_end_resistance",
    lambda rho, a, b: rho / (4 * a) * max(mpf(0), 1 - mpf(1.40978) * (a / b) + mpf(0.34406) * (a / b)**3 + mpf(0.0430) *
                                        (a / b)**5 + mpf(0.0227) * (a / b)**7), L(1e-8, 1e-3), L(1e-6, 1e-2),
    Above(1, 1e-6, 1e3), conditioned=True,
    constants=lambda rho, a, b: rho / (4 * a) * (1 + 2 * a / b))  # nearly nothing is left where the spot is the bar


def lap(r1, t1, r2, t2, b, l, c):
    through = (r1 * t1 + r2 * t2) / 2
    share = mpf(1) / 2 + (c / through) / (1 + c / through) / 6
    a, d = r1 / (b * t1), r2 / (b * t2)
    k = sqrt((a + d) * b / (c + share * through))
    return (a * d * l + ((a * a + d * d) * coth(k * l) + 2 * a * d / sinh(k * l)) / k) / (a + d)


law("lap_joint_resistance", lap, L(1e-8, 1e-6), L(1e-4, 1e-2), L(1e-8, 1e-6), L(1e-4, 1e-2), L(1e-3, 0.1), L(0.03, 1),
    L(1e-16, 1e-6))
law("contact_temperature_at",
    lambda at, v, t1, t2: sqrt((1 - at / v) * t1**2 + at / v * t2**2 + at * (v - at) / LORENZ), L(1e-9, 1e-6),
    L(2e-6, 1), U(200, 1000), U(200, 1000))


def hottest(v, t1, t2):
    at = v / 2 + LORENZ * (t2**2 - t1**2) / (2 * v)
    return max(t1, t2) if at <= 0 or at >= v else sqrt(t1**2 + LORENZ * 0 + (at / v) * (t2**2 - t1**2) + at * (v - at) / LORENZ)


law("hottest_point", hottest, L(1e-9, 1), U(200, 1000), U(200, 1000), more=[(1e-3, 300, 300.000001), (0.1, 300, 301)])
law("filmed_spot_temperature", lambda v, f, t: sqrt(t**2 + (v**2 - f**2) / (4 * LORENZ)), L(1e-3, 1), L(1e-6, 1e-3),
    U(0, 1000), more=[(0.3, 0.29999999999, 0)])
law("heat_into_first", lambda v, g, t1, t2: g * v**2 / 2 + LORENZ * g * (t2**2 - t1**2) / 2, L(1e-6, 1), L(1, 1e6),
    U(250, 400), U(400, 1000), more=[(1e-6, 1e3, 300, 300.000001)])
law("hot_spot_temperature", lambda v, t: sqrt(t**2 + v**2 / (4 * LORENZ)), L(1e-9, 10), U(0, 1500))
law("drop_for_spot_temperature", lambda spot, t: 2 * sqrt(LORENZ * (spot**2 - t**2)), U(500, 3000), U(0, 499),
    more=[(300.000001, 300), (1e-6, 0)])


def hot(v, c, scale):
    return 1 + c * (sqrt(1 + (v / scale) ** 2) - 1)


def x_of(v, vs, vm, c, scale):  # current over cold conductance
    return v * (sqrt((vm - vs) / (vm - v)) if v > vs else 1) / hot(v, c, scale)


law("conductance_for_drop", lambda vs, vm, c, scale, i, v: i / x_of(v, vs, vm, c, scale), U(0.05, 0.2), U(0.3, 0.6),
    U(0, 1), U(0.05, 0.2), L(1e-6, 1e4), L(1e-9, 0.29), conditioned=True)


def drop(vs, vm, c, scale, i, g):
    low, high, x = mpf(0), vm, i / g
    for _ in range(190):
        middle = (low + high) / 2
        if x_of(middle, vs, vm, c, scale) < x:
            low = middle
        else:
            high = middle
    return (low + high) / 2


law("joint_drop", drop, U(0.05, 0.2), U(0.3, 0.6), U(0, 1), U(0.05, 0.2), L(1e-6, 1e4), L(1e1, 1e6), n=24,
    conditioned=True,
    more=[(0.12, 0.43, 0.7, 0.0915, 1e-9, 1e4), (0.12, 0.43, 1, 0.0915, 100, 1e3), (0.12, 0.43, 0.5, 0.0915, 1e4, 1e3)])

# ---- air: U.S. Standard Atmosphere 1976, Einstein's oscillator
law("air_viscosity", lambda t: mpf(1.458e-6) * t ** mpf(1.5) / (t + mpf(110.4)), U(100, 1900))
conductivity = lambda t: mpf(2.64638e-3) * t ** mpf(1.5) / (t + mpf(245.4) * mpf(10) ** (-12 / t))
law("air_conductivity", conductivity, U(100, 1900))
oscillator = lambda x: x**2 * exp(x) / (exp(x) - 1) ** 2
heat_of_air = lambda t: mpf(287.05) * (mpf(3.5) * (mpf(0.781) + mpf(0.2095)) + mpf(2.5) * mpf(0.0093) + mpf(0.781) *
                                       oscillator(mpf(3393.5) / t) + mpf(0.2095) * oscillator(mpf(2273.6) / t))
law("air_heat", heat_of_air, U(100, 1900))
law("vibration_heat", oscillator, L(1e-9, 40))
law("pressure_at_altitude", lambda z: 101325 * (1 - mpf(2.25577e-5) * z) ** mpf(5.25588), U(-500, 11000))

# ---- convection: Churchill and Chu 1975, Morgan 1975, Churchill and Bernstein 1977
chu = lambda ra, pr: (mpf(0.60) + mpf(0.387) * ra ** (mpf(1) / 6) /
                      (1 + (mpf(0.559) / pr) ** (mpf(9) / 16)) ** (mpf(8) / 27)) ** 2
law("nusselt_horizontal_cylinder", chu, L(1e-12, 1e12), L(1e-2, 1e4), more=[(0, 0.7)])
law("nusselt_laminar",
    lambda ra, pr: mpf(0.36) + mpf(0.518) * ra ** mpf(0.25) / (1 + (mpf(0.559) / pr) ** (mpf(9) / 16)) **
    (mpf(4) / 9), L(1e-12, 1e9), L(1e-2, 1e4))


def morgan(ra):
    c, n = ((0.675, 0.058) if ra < 0.01 else (1.02, 0.148) if ra < 100 else (0.850, 0.188) if ra < 1e4 else
            (0.480, 0.250) if ra < 1e7 else (0.125, 1.0 / 3.0))
    return mpf(c) * ra ** mpf(n)


law("nusselt_morgan", morgan, L(1e-10, 1e12), n=16, conditioned=True)
bernstein = lambda re, pr: mpf(0.3) + mpf(0.62) * sqrt(re) * cbrt(pr) / (1 + (mpf(0.4) / pr) ** (mpf(2) / 3)) ** mpf(
    0.25) * (1 + (re / 282000) ** (mpf(5) / 8)) ** mpf(0.8)
law("nusselt_cross_flow", bernstein, L(1e-9, 1e7), L(1e-2, 1e4))
law("nusselt_mixed", lambda a, b, n: (a**n + b**n) ** (1 / n), L(1e-3, 1e4), L(1e-3, 1e4), U(1, 10))
density = lambda t, p=mpf(101325): p / (mpf(287.05) * t)
viscosity = lambda t: mpf(1.458e-6) * t ** mpf(1.5) / (t + mpf(110.4))
nu_of = lambda t: viscosity(t) / density(t)
alpha_of = lambda t: conductivity(t) / (density(t) * heat_of_air(t))
law("rayleigh_number",
    lambda d, ts, ta, t: mpf(9.80665) / t * abs(ts - ta) * d**3 / (nu_of(t) * alpha_of(t)), L(1e-6, 10), U(200, 800),
    U(200, 800), U(150, 1500), more=[(0.02, 300.000001, 300, 300)])


def cylinder(model):
    def loss(d, air, wind, pressure, eps, rise):
        surface = mpf(float(air) + float(rise))  # as the caller's doubles have it
        rise = surface - air
        t, p = (surface + air) / 2, pressure / 101325
        k, nu, pr = conductivity(t), nu_of(t), nu_of(t) / alpha_of(t)
        ra = mpf(9.80665) / t * abs(rise) * d**3 / (nu * alpha_of(t))
        radiant = pi * d * eps * SIGMA * (surface**4 - air**4)

        def with_wind(still):
            if wind == 0:
                return still
            return (still**4 + bernstein(wind * d / nu * p, pr) ** 4) ** mpf(0.25)

        if model != "iec":
            return pi * k * with_wind((chu if model == "chu" else lambda r, _: morgan(r))(ra * p * p, pr)) * rise + radiant
        # the standard's law less the radiation in the air it stands for; at least first principles
        base, first = mpf(303.15), chu(ra, pr)
        h = mpf(0.21) / d ** mpf(0.6) + mpf(3.94)
        left = (h * d * abs(rise) ** mpf(0.25) * rise - d * mpf(0.9) * SIGMA * ((base + rise) ** 4 - base**4)) / (k * rise)
        still, here = max(left, first), chu(ra * p * p, pr)
        own, base_radiation = eps, mpf(0.9)
        radiation = lambda e: d * e * SIGMA * (surface**4 - air**4) / rise / k
        if wind == 0 and p == 1 and eps == mpf(0.9):
            placed = still
        else:
            by_convection = still * here / first
            by_both = (still + radiation(base_radiation)) / (first + radiation(base_radiation)) * (
                here + radiation(eps)) - radiation(eps)
            placed = min(by_both, by_convection)
        return pi * k * with_wind(placed) * rise + radiant

    return loss


place = (L(1e-3, 0.3), U(200, 340))
# the surface's double is rounded once by the sum of air and rise
law("cylinder_loss_first_principles", cylinder("chu"), *place, C(0.0, 0.1, 3.0), C(101325.0, 70000.0), U(0.05, 1),
    L(1e-6, 400), n=16, more=[(0.02, 293.15, 0, 101325, 0.9, 1e-6), (0.02, 293.15, 5, 101325, 0.9, 1e-6)])
law("cylinder_loss_morgan", cylinder("morgan"), *place, C(0.0, 0.1, 3.0), C(101325.0, 70000.0), U(0.05, 1),
    L(1e-6, 400), n=16)
law("cylinder_loss", cylinder("iec"), *place, C(0.0, 0.1, 3.0), C(101325.0, 70000.0), C(0.9, 0.3, 1.0), L(1e-6, 400),
    n=24, more=[(0.02, 293.15, 0, 101325, 0.9, r) for r in (1e-6, 1e-3, 1, 10, 60, 300)] + [
        (0.02, 313.15, 0, 101325, 0.9, -20), (0.02, 293.15, 1, 90000, 0.5, 1e-3)])

# ---- coverings: 2 pi k/ln(D/d), (pi/4)(D^2 - d^2) c, Van Wormer 1/ln(r^2) - 1/(r^2 - 1)
ring = (L(1e-4, 0.1), Above(1, 1e-12, 20))
law("covering_conductance", lambda k, d, D: 2 * pi * k / log(D / d), L(1e-3, 10), *ring, n=20)
law("van_wormer_share", lambda d, D: 1 / log((D / d) ** 2) - 1 / ((D / d) ** 2 - 1), L(1e-4, 0.1), Above(0, 1e-12, 20),
    n=24, more=[(0.01, 0.010005), (0.01, 0.010006), (0.01, 0.0101), (0.01, 0.011)])
law("covering_heat_capacity", lambda c, d, D: c * pi / 4 * (D**2 - d**2), L(1e5, 1e7), *ring, n=20)


def across(k, d, D):
    lead = k * (D**2 + d**2) / (D**2 - d**2)
    gap = mpf(0.028) + mpf(6.0 / 12.0) * D
    b = mpf(0.75) * (lead - gap) / (lead + gap)
    return gap * (1 + b) / (1 - b)


law("conductivity_across_bundle", across, L(1e-2, 10), *ring, n=20)
law("bundle_rise_inside", lambda d, n, k: n * (1 - 1 / n) ** 2 / (4 * pi * k), C(0.02), C(2.0, 3.0, 6.0, 30.0, 200.0),
    L(1e-3, 10))

# ---- crimps: MIL-T-7928E, drop over test current, straight in both logarithms between the sizes of ASTM B258 (0.127 mm
# by 92^((36 - n)/39)), whose diameters the library has as rounded doubles; shares of a barrel
CRIMPS = [(26, 3, 8), (24, 4.5, 8), (22, 9, 7), (20, 11, 6), (18, 16, 5), (16, 22, 7), (14, 32, 6), (12, 41, 5),
          (10, 55, 5), (8, 73, 5), (6, 101, 5), (4, 135, 5), (2, 181, 5), (1, 211, 5), (0, 245, 5), (-1, 283, 5),
          (-2, 328, 5), (-3, 380, 5)]


def crimp(area):
    points = [(log(pi / 4 * (mpf(0.127e-3) * mpf(92) ** (mpf(36 - n) / 39)) ** 2), log(mpf(mv) / 1000 / mpf(amps)))
              for n, amps, mv in CRIMPS]
    k = 1
    while k + 1 < len(points) and points[k][0] < log(area):
        k += 1
    (x0, y0), (x1, y1) = points[k - 1], points[k]
    return exp(y0 + (y1 - y0) * (log(area) - x0) / (x1 - x0))


law("crimp_limit", crimp, L(1.3e-7, 3e-4), n=16, conditioned=True, constants=lambda a: 20 * crimp(a))  # logs of about 15
law("barrel_shortfall", lambda a, b, m: 1 - min(a / b, b / a) * (1 - m), L(1e-6, 1e-3), Above(0, 1e-12, 3),
    C(0.0, 1e-12, 1e-6, 0.3), n=16)
law("underfilled_factor", lambda s: 1 / (1 - s) ** 3, U(0, 0.99), more=[(1e-12,), (0.999999999,)])

# ---- currents: R i + L di/dt = U
law("current_after", lambda u, r, l, before, t: u / r * (1 - exp(-t * r / l)) + before * exp(-t * r / l), L(1e-3, 100),
    L(1e-4, 10), L(1e-9, 1e-2), L(1e-6, 1e3), L(1e-12, 10), conditioned=True, n=16,
    more=[(60, 0.02, 1e-4, 0, 1e-12), (60, 0.02, 1e-4, 0, 1e-6)])


def rise(l, a, b, u, slope):
    return l / slope * log((u - slope * a) / (u - slope * b)) if slope else l * (b - a) / u


# the mean of 1/u over each panel is exact where u is straight
law("rise_time", rise, L(1e-9, 1e-2), U(0, 100), Plus(1, 1e-6, 300), U(60, 100), L(1e-9, 0.14), n=24, conditioned=True,
    more=[(1e-4, 0, 300, 80, 1e-5), (1e-4, 0, 300, 80, 1.5e-3), (1e-4, 0, 200, 80, 2e-3)])

# ---- fins, Incropera 3.6: k A theta'' = g theta - q between two ends; annular fin without end
f = lambda kA, g, q, l: (sqrt(g / kA), q / g)


def into(kA, g, q, l, one, other):
    m, far = f(kA, g, q, l)
    return kA * m * ((one - far) * coth(m * l) - (other - far) / sinh(m * l))


def mean_of(kA, g, q, l, one, other):
    m, far = f(kA, g, q, l)
    return far + (one + other - 2 * far) * tanh(m * l / 2) / (m * l)


def highest(kA, g, q, l, one, other):
    m, far = f(kA, g, q, l)
    u1, u2 = one - far, other - far
    a, b = (u1 + u2) / 2 / cosh(m * l / 2), (u2 - u1) / 2 / sinh(m * l / 2)  # a cosh(m x) + b sinh(m x) about the middle
    if a < 0 and abs(b / a) < tanh(m * l / 2):
        return far - sqrt(a * a - b * b)
    return max(one, other)


fin = (L(1e-6, 1), L(1e-3, 100))
law("fin_own_end", lambda kA, g, q, l: kA * sqrt(g / kA) * coth(sqrt(g / kA) * l), *fin, U(0, 1e3), L(1e-9, 10), n=16)
law("fin_other_end", lambda kA, g, q, l: kA * sqrt(g / kA) / sinh(sqrt(g / kA) * l), *fin, U(0, 1e3), L(1e-9, 10),
    n=16, where=lambda kA, g, q, l: l * (g / kA) ** 0.5 < 600, conditioned=True)
ends = (L(1e-6, 10), L(1e-6, 500), L(1e-6, 500))
law("fin_into_end", into, *fin, L(1e-6, 1e3), *ends, n=20, conditioned=True,
    where=lambda kA, g, q, l, a, b: l * (g / kA) ** 0.5 < 600, more=[(1e-2, 1, 10, 1e-4, 20, 20)])
law("fin_mean_rise", mean_of, *fin, L(1e-6, 1e3), *ends, n=20, conditioned=True,
    where=lambda kA, g, q, l, a, b: l * (g / kA) ** 0.5 < 600, more=[(1e-2, 1e-3, 100, 1e-3, 20, 21)])
law("fin_highest_rise", highest, *fin, L(1e-6, 1e3), *ends, n=20, conditioned=True,
    where=lambda kA, g, q, l, a, b: l * (g / kA) ** 0.5 < 600,
    more=[(1e-2, 1e-3, 100, 0.1, 20, 20.5), (1e-2, 1e-3, 100, 1e-2, 20, 20), (1, 5, 100, 2, 3, 4)])


def disc(k, t, a, h):
    m = sqrt(2 * h / (k * t)) * a
    return 2 * pi * k * t * m * besselk(1, m) / besselk(0, m)


law("disc_fin_conductance", disc, L(1, 400), L(1e-4, 0.1), L(1e-6, 1), L(1e-3, 1e3), n=24, allowed=2e-13,
    more=[(10, 1e-3, 1, 1.3e3), (10, 1e-3, 1, 1.25e3), (10, 1e-3, 10, 1e3), (10, 1e-3, 100, 1e3),
          (400, 0.1, 1e-9, 1e-3), (50, 0.01, 1e-7, 10)])

# ---- adiabatic heating, IEC 60949: J^2 t = (c/(rho a)) ln((span + T2 - 20)/(span + T1 - 20))
STORED = mpf(8900 * 385)


def integral(rho, a, t1, t2):
    span = 1 / a
    return STORED * span / rho * log((span + t2 - T20) / (span + t1 - T20))


law("adiabatic_current", lambda rho, a, A, t, t1, t2: A * sqrt(integral(rho, a, t1, t2) / t), L(1e-8, 1e-7),
    L(1e-3, 6e-3), L(1e-9, 1e-2), L(1e-6, 1e3), U(280, 700), Plus(4, 1e-6, 600), n=20)


def after(rho, a, A, i, t, t1):
    span = 1 / a
    return t1 + (span + t1 - T20) * (exp((i / A) ** 2 * t * rho / (STORED * span)) - 1)


law("adiabatic_temperature", after, L(1e-8, 3e-8), L(3e-3, 5e-3), L(1e-5, 1e-4), L(1e-6, 1e3), L(1e-3, 5), U(280, 400),
    where=lambda rho, a, A, i, t, t1: after(rho, a, A, i, t, t1) < 1300)
k226 = lambda t1, t2: mpf(226e6) * sqrt(log((mpf(234.5) + 20 + t2 - T20) / (mpf(234.5) + 20 + t1 - T20)))
law("k_factor", k226, U(280, 700), Plus(0, 1e-6, 500), n=16)
law("short_circuit_time", lambda A, e, i, t1, t2: (e * k226(t1, t2) * A / i) ** 2, L(1e-7, 1e-2), U(1, 1.3),
    L(1, 1e6), U(280, 700), Plus(3, 1e-6, 500))
law("short_circuit_temperature",
    lambda A, e, i, t, t1: t1 + (mpf(254.5) + t1 - T20) * (exp((i / (e * A)) ** 2 * t / mpf(226e6) ** 2) - 1),
    L(1e-5, 1e-3), U(1, 1.3), L(1, 1e3), L(1e-3, 5), U(280, 500),
    where=lambda A, e, i, t, t1: (i / A) ** 2 * t < 3e16)
law("steady_fusing_current", lambda d: 10244 * (d / mpf(0.0254)) ** mpf(1.5), L(1e-6, 0.1))

# ---- modes: (e^(r t) - 1)/r and its integral
law("mode_by_speed", lambda r, t: expm1(r * t) / r, L(1e-9, 1), L(1e-6, 500), n=8,
    more=[(-1, 1e-9), (-3, 10), (-1e-3, 50), (-1e-12, 1)])
law("mode_by_twice", lambda r, t: (expm1(r * t) - r * t) / r**2, L(1e-9, 1), L(1e-6, 500), n=8,
    more=[(-s * x, 1) for x in (1e-9, 0.01, 0.0999, 0.1001, 0.11, 0.2, 0.5, 1, 3, 30) for s in (1, -1)])
law("modulus_at", lambda e, t: e * (1 - mpf(3.6e-4) * (t - T20)), L(1e6, 1e12), U(0, 1770))

# ---- inductance, Neumann's integrals in closed form
parallel = lambda l, d: MU0 / (2 * pi) * (l * asinh(l / d) - sqrt(l * l + d * d) + d)
law("mutual_inductance_parallel", parallel, L(1e-6, 1e3), L(1e-6, 1e3), n=20, more=[(1e-3, 1e6), (1e6, 1e-6)])
law("pair_inductance",
    lambda s, a, b, own: MU0 / (2 * pi) * (log(s / a) + log(s / b)) + 2 * own, U(0.01, 10), L(1e-6, 5e-3),
    L(1e-6, 5e-3), L(1e-12, 1e-7), more=[(0.010000001, 0.01, 1e-9, 0), (0.02, 0.01, 0.01, 0)])


def loop(l, w, r):
    own = lambda side: parallel(side, r) + MU0 / (8 * pi) * side
    return 2 * (own(l) - parallel(l, w)) + 2 * (own(w) - parallel(w, l))


law("loop_inductance", loop, L(0.1, 100), L(0.1, 100), L(1e-6, 0.04), more=[(100, 0.02, 0.01), (100, 100, 1e-6)],
    conditioned=True)


def coaxial(a, b, z):
    m = 4 * a * b / ((a + b) ** 2 + z * z)
    k = sqrt(m)
    return MU0 * sqrt(a * b) * ((2 / k - k) * ellipk(m) - 2 / k * ellipe(m))


def precise(g):  # the subtraction above loses digits: with more of them
    def out(*x):
        mp.dps = 120
        value = g(*x)
        mp.dps = 50
        return +value

    return out


law("mutual_inductance_coaxial", precise(coaxial), L(1e-3, 10), L(1e-3, 10), L(1e-6, 100), n=20,
    more=[(0.3, 0.3, 1e-9), (0.3, 0.3000000001, 0), (1e-3, 1e-3, 100), (1e-6, 10, 1)])


def coil(turns, D, p, a):
    turn = MU0 * D / 2 * (log(4 * D / a) - 2) + MU0 / 4 * D / 2
    return turns * turn + 2 * sum((turns - n) * coaxial(D / 2, D / 2, n * p) for n in range(1, int(turns)))


law("coil_inductance", precise(coil), C(1.0, 2.0, 3.0, 12.0), L(0.2, 3), L(0.012, 0.1), L(1e-4, 0.006), n=10,
    conditioned=True)
law("turn_inductance", lambda R, a: MU0 * R * (log(8 * R / a) - 2) + MU0 / (8 * pi) * 2 * pi * R, L(0.05, 10),
    L(1e-6, 0.01))

# ---- heat along a loop's record, magnets, oxide, ageing
law("overstated_heat_input", lambda u, drop, i, v: drop / (u - drop), U(20, 40), L(1e-9, 19), C(200.0), C(5e-3),
    more=[(30, 29.9999999, 200, 5e-3)])
law("magnet_force", lambda F, t, gap: F * (1 - mpf(2e-3) * (t - T20)) ** 2 / (1 + gap / mpf(0.5e-3)) ** 2, L(1e-3, 1e5),
    U(233, 523), L(1e-9, 0.1))
rate = lambda t: mpf(0.225) * exp(-mpf(0.82) / mpf(8.617e-5) * (1 / t - 1 / mpf(373.15)))


def oxide(t, time):
    h = time / HOUR
    return mpf(1e-9) * max(sqrt(rate(t) * h), mpf(2.2) + mpf(0.9) * log10(h / 1000))


law("copper_oxide_thickness", oxide, U(230, 453), L(1, 1e10), n=24, conditioned=True,
    more=[(373.150001, 1e8), (373.15, 1e8), (200, 3600), (293.15, 12945.7)])


def grown(x, t, time):
    h, x = time / HOUR, x / mpf(1e-9)
    decades = (x - mpf(2.2)) / mpf(0.9) + 3
    by_log = x + mpf(0.9) * log10(1 + h / mpf(10) ** decades) if decades < 9 else x
    return mpf(1e-9) * max(sqrt(x * x + rate(t) * h), by_log)


law("copper_oxide_grown", grown, L(1e-12, 1e-7), U(230, 453), L(1e-3, 1e9), n=24, conditioned=True)


def square_growth(x, t):
    x = x / mpf(1e-9)
    decades = (x - mpf(2.2)) / mpf(0.9) + 3
    by_log = 2 * x * mpf(0.9) / log(10) * mpf(10) ** (-decades) if decades < 9 else mpf(0)
    return max(rate(t), by_log) * mpf(1e-18) / HOUR


law("copper_oxide_square_growth", square_growth, L(1e-12, 1e-6), U(230, 453), n=16, conditioned=True)
law("ageing_force_left", lambda n, swing: 1 - mpf(0.02) * swing / 50 * log10(1 + n), L(1e-9, 1e7), U(0, 150))

# ---- radiation
law("radiated", lambda e, t, w: e * SIGMA * (t**4 - w**4), U(0, 1), U(200, 1500), U(200, 1500),
    more=[(0.9, 300.000001, 300), (0.9, 300, 300.0000001)])

# ---- relaxation: Larson-Miller, creep in series
law("equivalent_time", lambda t, s: s * exp(14600 * (1 / mpf(293.0) - 1 / t)), U(200, 500), L(1e-3, 1e9),
    conditioned=True, more=[(293.000001, 3600), (293.0001, 3600)])
law("series_loss", lambda a, s, b: 1 - (1 - a) ** s * (1 - b) ** (1 - s), L(1e-15, 0.9), U(0.01, 0.99), L(1e-15, 0.9),
    n=16)


def relaxed(r0, c, ref, t, s):
    return 1 - exp(-r0 * exp(c * (t * (20 + log10(s / HOUR)) - ref)))


law("copper_relaxation", lambda r0, c, t, s: relaxed(r0, c, mpf(378.15) * 23, t, s), U(0.05, 0.4), U(5e-4, 2e-3),
    U(250, 500), L(1, 1e9), conditioned=True)
law("stress_relaxation",
    lambda mu, t, s: 1 - exp(-mpf(0.04966) * exp(mpf(6.405) * (mu - mpf(0.7)) + mpf(8.70e-4) *
                                                  (t * (20 + log10(s / HOUR)) - mpf(293.15) * 23))), U(0.2, 1),
    U(200, 450), L(1e-3, 1e9), conditioned=True)

# ---- resistivity by Matula's table, straight between its lines
COPPER = [(273.15, 15.43), (293, 16.78), (300, 17.25), (350, 20.63), (400, 24.02), (500, 30.90), (600, 37.92),
          (700, 45.14), (800, 52.62), (900, 60.41), (1000, 68.58), (1100, 77.17), (1200, 86.26), (1300, 95.92),
          (1357.6, 101.71)]


def along(t):
    k = 1
    while k + 1 < len(COPPER) and COPPER[k][0] < t:
        k += 1
    (x0, y0), (x1, y1) = COPPER[k - 1], COPPER[k]
    return mpf(y0) + (mpf(y1) - mpf(y0)) * (t - mpf(x0)) / (mpf(x1) - mpf(x0))


law("tabulated_resistivity", lambda t: mpf(1000) / 58 * mpf(10) ** -9 + (along(t) - along(T20)) * mpf(10) ** -9,
    U(274, 1357))

# ---- scatter: logarithmic distances add as squares; split log-normal factors
SPREAD = mpf(1.6448536269514722)
bands = (L(1e-3, 1), Above(0, 1e-9, 10), Above(1, 1e-9, 10))
law("product_of",
    lambda a, b, c, d, e, g: b * e * exp(-sqrt(log(b / a) ** 2 + log(e / d) ** 2)), L(1e-3, 1), Above(0, 1e-6, 10),
    Above(1, 1e-6, 10), L(1e-3, 1), Above(3, 1e-6, 10), Above(4, 1e-6, 10))
law("lognormal_spread", lambda a, b, c: log(c / b) / SPREAD, *bands, n=16)


def beyond(a, b, c, x):
    away = x - log(b)
    return erfc(away / (log(b / a) if away < 0 else log(c / b)) * SPREAD / sqrt(2)) / 2


symmetric = [(1 / r, 1.0, r, s / q, s, s * q) for r, s, q in ((2.0, 1.0, 4.0), (2.0, 1.5, 2.0), (4.0, 0.25, 8.0))]


def smaller(a, b, c, d, e, g):
    """The second beyond the first, weighed by the deviate of the first, each half by itself and cut where both are equal."""
    at = lambda t: log(b) + t * (log(b / a) if t < 0 else log(c / b)) / SPREAD
    cut = (log(e) - log(b)) * SPREAD / (log(b / a) if e < b else log(c / b)) if e != b else mpf(0)
    narrow = min(log(e / d), log(g / e)) / max(log(b / a), log(c / b))
    places = {mpf(-15), mpf(0), mpf(15)} | {cut + k * narrow * w for k in (-1, 0, 1) for w in (1, 8)}
    weighed = lambda t: exp(-t * t / 2) / sqrt(2 * pi) * beyond(d, e, g, at(t))
    return quad(weighed, sorted(p for p in places if -15 <= p <= 15))


halves = (L(0.1, 0.9), U(0.9, 1.2), U(1.3, 10))
# stated: 1e-10, and of even halves known in closed form
law("probability_smaller",
    lambda a, b, c, d, e, g: erfc((log(b) - log(e)) / sqrt(log(c / b) ** 2 + log(g / e) ** 2) * SPREAD / sqrt(2)) / 2,
    more=symmetric + [(0.5, 1.0, 2.0, 1.2 / r, 1.2, 1.2 * r) for r in (1.0000001, 1.001, 1.01)], allowed=1e-10)
law("probability_smaller_halves", smaller, *halves, *halves, n=12, allowed=lambda value, _: mpf("1e-10") / value,
    more=[(0.5, 1.0, 1.7, 0.9999, 1.1, 3.0), (0.2, 1.0, 1.001, 0.9, 1.3, 1.31)])


# ---- power screws, Shigley 8
def arms(d, p, half, fr, collar, across):
    mean, fs = d - p / 2, fr / cos(half)
    return (mean / 2 * (p + pi * fs * mean) / (pi * mean - fs * p), mean / 2 * (pi * fs * mean - p) / (pi * mean + fs * p),
            collar * across / 2)


thread = (L(5e-3, 0.1), L(5e-4, 4e-3), U(0, 0.7), U(0.01, 0.6), U(0.01, 0.6), U(0, 0.05))
law("screw_force", lambda *x: x[6] / (arms(*x[:6])[0] + arms(*x[:6])[2]), *thread, L(1e-6, 1e4))
law("lowering_torque", lambda *x: x[6] * (arms(*x[:6])[1] + arms(*x[:6])[2]), *thread, L(1e-6, 1e6), conditioned=True)
law("screw_efficiency", lambda *x: x[1] / (2 * pi * (arms(*x)[0] + arms(*x)[2])), *thread)

# ---- skin effect: Z/R0 = (z/2) I0(z)/I1(z), z = (1 + j) a/delta
law("skin_depth", lambda r, f, u: sqrt(r / (pi * f * MU0 * u)), L(1e-9, 1e-3), L(1e-3, 1e9), L(1, 1e5))


def more_of(x):
    mp.dps = 90
    z = mpc(x, x)
    # scaled by e^-|z|, which cancels; from 300 on the expansion of both is exact to ninety digits
    value = z / 2 * besseli(0, z) / besseli(1, z) - 1
    mp.dps = 50
    return value


law("skin_increase", lambda x: +more_of(x).real, L(1e-6, 300), n=24, more=[(22.6,), (22.7,), (1e-9,)])
law("skin_inductance", lambda x: +(4 * more_of(x).imag / x**2), L(1e-6, 300), n=24, more=[(22.6,), (22.7,)])


def iec_skin(x):
    if x <= mpf(2.8):
        return x**4 / (192 + mpf(0.8) * x**4)
    if x <= mpf(3.8):
        return mpf(-0.136) - mpf(0.0177) * x + mpf(0.0563) * x * x
    return mpf(0.354) * x - mpf(0.733)


law("iec_skin_factor", iec_skin, L(1e-3, 30), n=16)

# ---- supply: U^2 + (X I)^2 = U0^2
law("reactive_line_voltage", lambda u, i, a: u * sqrt((i - a) * (i + a)) / i, U(50, 100), U(200, 500), L(1e-6, 199),
    conditioned=True, more=[(80, 300, 299.9999999)])

# ---- thermal endurance, IEC 60216: ln(time) straight in 1/T, halved from the index to the index and the interval
slope = lambda index, h: log(2) * index * (index + h) / h
law("endurance_time", lambda index, h, t: 20000 * HOUR * exp(slope(index, h) * (1 / t - 1 / index)), U(330, 450),
    U(5, 15), U(300, 460), conditioned=True, more=[(363.15, 10, 363.150001), (363.15, 1, 363.2), (363.15, 50, 300)])


def equivalent(index, h, t1, s1, t2, s2):
    b = slope(index, h)
    used = s1 / exp(b * (1 / t1 - 1 / index)) + s2 / exp(b * (1 / t2 - 1 / index))
    return 1 / (1 / index + log((s1 + s2) / used) / b)


law("equivalent_temperature", equivalent, U(330, 450), U(5, 15), U(320, 400), L(1, 1e8), U(320, 400), L(1, 1e8))


# ---- waveforms: mean square, mean size, Fourier coefficient
def mean_size(a, b):
    return abs(a + b) / 2 if a * b >= 0 else (a * a + b * b) / (2 * abs(b - a))


pieces = (L(1e-6, 1), U(-500, 500), U(-500, 500), L(1e-6, 1), U(-500, 500), U(-500, 500))
law("waveform_rms",
    lambda d, a, b, e, g, h: sqrt((d * (a * a + a * b + b * b) + e * (g * g + g * h + h * h)) / 3 / (d + e)), *pieces,
    more=[(1, 100, 100.000001, 1, -100, -100)])
law("waveform_mean_absolute", lambda d, a, b, e, g, h: (d * mean_size(a, b) + e * mean_size(g, h)) / (d + e), *pieces)
law("pulse_harmonic",
    lambda d, a, e, b, n: 2 * abs((a - b) * sin(pi * n * d / (d + e))) / (pi * n), L(1e-6, 1), U(100, 500), L(1e-6, 1),
    U(-300, 90), C(1.0, 2.0, 3.0, 17.0, 255.0), n=20, conditioned=True, more=[(1e-9, 300, 1, 100, 1)])

# ---- welds: Rosenthal's plates, EN 1011-2
law("relative_thickness", lambda d, c, r, h: d * sqrt(c * r / h), L(1e-4, 1), L(1e5, 1e7), L(1e-6, 3e3), L(1e3, 1e8))
law("thin_plate_peak_beyond_fusion",
    lambda h, c, d, t0, tm, y: 1 / (sqrt(2 * pi * mp.e) * c * d * y / h + 1 / (tm - t0)), U(3e5, 3e6), U(3e6, 5e6),
    U(1e-3, 2e-3), U(280, 400), U(1500, 1800), L(1e-9, 0.1), more=[(1e6, 4e6, 1e-3, 1799.999999, 1800, 1e-3)])
law("thick_plate_peak_rise", lambda h, c, d, t0, tm, r: 2 * h / (pi * mp.e * c * r * r), U(1e6, 3e6), U(3e6, 5e6),
    U(0.05, 0.1), U(280, 400), U(1700, 1800), U(0.02, 0.03))
between = lambda t, n: 1 / (mpf(500 + 273.15) - t) ** n - 1 / (mpf(800 + 273.15) - t) ** n
law("thick_plate_cooling_time", lambda h, k, t: h / (2 * pi * k) * between(t, 1), L(1e4, 1e8), L(1, 400), U(0, 770),
    more=[(1e6, 30, 773.149999)], conditioned=True)


def t85(h, d, t):
    q, d, c = h * mpf(10) ** -6, d * 1000, t - mpf(273.15)
    return max((6700 - 5 * c) * q * between(t, 1),
               (4300 - mpf(4.3) * c) * 100000 * (q / d) ** 2 * between(t, 2))


law("steel_cooling_time", t85, L(1e5, 1e7), L(1e-3, 0.1), U(274, 523), conditioned=True)


def wire(rho, a20, d, l, v, t0, i):
    rho0 = rho * (1 + a20 * (t0 - T20))
    a, J = a20 * rho / rho0, 4 * i / (pi * d * d)
    k = J * J * rho0 / (STORED * v)
    ends = log(1 + a * (mpf(1356.15) - t0)) / (a * k) if k else l
    heated = min(l, ends)
    return J * rho0 * (expm1(a * k * heated) / (a * k) if k else heated) + J * rho * (
        1 + a20 * (mpf(1356.15) - T20)) * (l - heated)


law("wire_extension_drop", wire, L(1e-8, 1e-6), L(1e-5, 6e-3), L(5e-4, 3e-3), L(1e-6, 0.1), L(1e-3, 1), U(280, 400),
    L(1e-6, 600), n=16, conditioned=True)


# ---- a piece heated by bursts: C T' + G T = heat, burst by burst
def stay(C, G, time, on, period, _):
    lam, bursts = G / C, []
    begin = mpf(0)
    while begin < time * (1 - mpf(10) ** -12):
        bursts.append((begin, min(begin + on, time)))
        begin += period
    burning = sum(b - a for a, b in bursts)
    if lam == 0:
        end, whole = burning, sum((time - (a + b) / 2) * (b - a) for a, b in bursts)
    else:
        end = sum((exp(-lam * (time - b)) - exp(-lam * (time - a))) / lam for a, b in bursts)
        whole = (burning - end) / lam
    return whole / burning, end * time / burning


# balance of what a series leaves out below 1e-5 of the stay and what the difference above it loses
course = (L(10, 1e5), L(1e-9, 10), U(100, 1000), U(5, 60), U(61, 120), C(50.0))
STAY = 1e-10
dozen = [(1000, g, 600, 20, 60, 50) for g in (0, 1e-12, 1e-6, 1e-5, 1.6e-5, 1.7e-5, 1e-4, 1e-2, 1)]
dozen += [(1000, g, 610, 20, 60, 50) for g in (0, 1e-5, 1.6e-5, 1e-4, 1)]
law("heating_over_stay", lambda C, *x: stay(C, *x)[0] / C, *course, n=12, more=dozen, allowed=STAY)
law("end_over_mean", lambda *x: stay(*x)[1] / stay(*x)[0], *course, n=12, more=dozen, allowed=STAY)

# ---- numerics
law("bessel_j0", lambda x: besselj(0, x), L(1e-6, 200), n=24, conditioned=True, allowed=1e-13)
law("bessel_k0", lambda x: besselk(0, x), L(1e-8, 690), n=24, conditioned=True, allowed=1e-13)
law("bessel_k1", lambda x: besselk(1, x), L(1e-8, 690), n=24, conditioned=True, allowed=1e-13)
# a square in the root of x between its points, exactly; near zero the table takes the law at 1e-6 for its limit
law("curve_table", lambda a, b, c, x: x * (a + b * sqrt(x) + c * x), U(1, 10), U(0, 1), U(0, 0.1), L(1, 1000), n=16,
    allowed=2e-14)


def slope_of(*x):
    xs, ys = x[0::2], x[1::2]
    mx, my = sum(xs) / 4, sum(ys) / 4
    return sum((a - mx) * (b - my) for a, b in zip(xs, ys)) / sum((a - mx) ** 2 for a in xs)


# normal equations: the square of the spread's condition; readings apart by their own size
law("fitted_slope", slope_of, U(0, 1), U(0, 1), U(1, 2), U(2, 3), U(2, 3), U(4, 5), U(3, 4), U(6, 7), n=12,
    allowed=1e-12)
# what the finders promise: 2^-44 of the root, 6e-14
law("root_between", lambda x: log(1 + x), L(1e-9, 1e9), n=16, allowed=6e-14)
law("rising_root", lambda x: log(1 + x), L(1e-9, 1e9), n=16, allowed=6e-14)


def chain(g, at_ends, between, heat, place):  # 24 places, g to each neighbour; the diagonal as it is given
    diagonal, right = [at_ends] + [between] * 22 + [at_ends], [heat] + [mpf(0)] * 23
    for n in range(1, 24):
        diagonal[n] -= g * g / diagonal[n - 1]
        right[n] += g / diagonal[n - 1] * right[n - 1]
    rise = right[23] / diagonal[23]
    for n in range(22, int(place) - 1, -1):
        rise = (right[n] + g * rise) / diagonal[n]
    return rise


law("sparse_chain", chain, L(1e-3, 1e3), Above(0, 1e-9, 10), Plus(1, 1e-3, 1e3), L(1e-3, 1e3), C(0.0, 5.0, 12.0, 23.0),
    n=24, conditioned=True, where=lambda g, e, b, h, p: b > 2 * g)


# ---- a covered conductor in time: that of five places of its covering, marched by marches.py. Leads of 10, 35, 95 and
# 185 mm2, covering 1.8 to 2.5 mm; currents that bring them to about 85 degC
def lead(mm2, ratio, diameter, air=298.15):
    area = mm2 * 1e-6
    return (1.7241e-8 * 1.05 / area, 3.93e-3, 3.43e6 * area, 2.0e6 * math.pi / 4 * diameter**2 * (1 - ratio**-2),
            2 * math.pi * 0.25 / math.log(ratio), ratio, diameter, air)


LEADS = [lead(10, 1.75, 0.0085), lead(35, 1.5, 0.0125), lead(95, 1.35, 0.0185), lead(185, 1.28, 0.0245, 313.15)]
known = {}


def period_of(x):
    key = tuple(map(float, x))
    if key not in known:
        known[key] = marches.Conductor(x[:8]).settled(x[8], x[9], x[10] - x[9])
    return known[key]


def single(how, amps, time, start):
    key = (tuple(map(float, how)), float(amps), float(time), float(start))
    if key not in known:
        c = marches.Conductor(how)
        known[key] = c.march([mpf(start) - mpf(how[7])] * 5, amps, time)
    return known[key]


PROGRAMMES = [((180.0, 300.0), (118, 269, 535, 735)), ((360.0, 600.0), (111, 257, 517, 716)),
              ((60.0, 300.0), (180, 430, 879, 1224)), ((120.0, 600.0), (157, 389, 820, 1161))]
periods = [(*how, float(i), on, whole) for (on, whole), amps in PROGRAMMES for how, i in zip(LEADS, amps)]
# stated: conductor 0.05 % of the rise at 3 min of 5 and 6 of 10, 0.1 % at 1 of 5 and 2 of 10, the surface's peak twice that
often = lambda x: 5e-4 if x[9] / x[10] > 0.5 else 1e-3
law("period_conductor_peak", lambda *x: marches.highest(period_of(x), 0), more=periods, marched=True,
    allowed=lambda _, x: often(x))
law("period_conductor_mean", lambda *x: marches.mean(period_of(x), 0), more=periods, marched=True,
    allowed=lambda _, x: often(x))
law("period_surface_peak", lambda *x: marches.highest(period_of(x), 4), more=periods, marched=True,
    allowed=lambda _, x: 2 * often(x))


def steady(*x):  # the surface gives off what the conductor under it makes
    c = marches.Conductor(x[:8])
    made = lambda rise: x[8] ** 2 * c.resistance * (1 + c.alpha * (c.above + rise))
    low, high = mpf(0), mpf(600)
    for _ in range(170):
        middle = (low + high) / 2
        low, high = (middle, high) if c.loss(middle) < made(middle + c.loss(middle) / mpf(x[4])) else (low, middle)
    return low + c.loss(low) / mpf(x[4])


# means agree within 1e-10 of the rise
law("steady_conductor", steady, more=[(*how, float(i)) for how, amps in zip(LEADS, (100, 220, 430, 585))
                                      for i in (amps, 0.3 * amps, 0.01 * amps)], allowed=1e-9, marched=True)

# stated: within 0.01 K, of rises above 100 K 1e-4
in_time = lambda rise: max(mpf("0.01"), abs(rise) / 10000)
shots = [(*how, i, t, how[7]) for how, amps in zip(LEADS, (150.0, 320.0, 600.0, 800.0))
         for i, t in ((amps, 10.0), (amps, 300.0), (4 * amps, 15.0), (0.5 * amps, 7200.0))]
shots += [(*how, 0.0, t, 358.15) for how in LEADS[1:3] for t in (5.0, 60.0, 1800.0)]
for which, place in (("conductor", 0), ("surface", 4)):
    law("shot_" + which, lambda *x, place=place: single(x[:8], *x[8:])[-1][3][-1][place], more=shots, marched=True,
        allowed=lambda value, x: in_time(single(x[:8], *x[8:])[-1][3][-1][0]) / abs(value))


def passing(*x):
    steps = single(x[:8], x[8], mpf(40000), x[9])
    return marches.passage(steps, mpf(x[10]) - mpf(x[7]))[0]


def late(value, x):  # what the temperature may be off, over how fast it changes there
    c, steps = marches.Conductor(x[:8]), single(x[:8], mpf(x[8]), mpf(40000), mpf(x[9]))
    wanted = mpf(x[10]) - mpf(x[7])
    begin, h, at, stage = next(k for k in steps if k[0] <= value <= k[0] + k[1])
    there = [marches.path((begin, h, at, stage), i)((value - begin) / h) for i in range(5)]
    return in_time(wanted) / abs(c.speed(there, mpf(x[8]))[0]) / value


law("time_to_conductor", passing, marched=True, allowed=late,
    more=[(*how, i, how[7], 358.15) for how, amps in zip(LEADS, (115.0, 250.0, 480.0, 650.0)) for i in (amps, 3 * amps)] +
    [(*how, 0.0, 358.15, k) for how in LEADS[:3] for k in (353.15, 328.15, 308.15)])


def slowest(*x):  # of C x' = -(G K + slope at the surface) x, the tangent at a surface temperature
    c = marches.Conductor(x[:8])
    m = matrix(5, 5)
    for a in range(5):
        for b in range(5):
            m[a, b] = -c.flow[a][b] / c.heat[a]
    m[4, 4] -= diff(c.loss, mpf(x[8]) - mpf(x[7])) / c.heat[4]
    return -1 / max(v.real for v in eig(m, left=False, right=False))


# stated: the slope over a twentieth of the rise to either side, 3e-4
law("time_constant", slowest, allowed=3e-4, more=[(*how, how[7] + rise) for how in LEADS for rise in (10.0, 45.0, 200.0)])


def straight(place):
    def rise(*x):
        c, m = marches.Conductor(x[:8]), matrix(5, 5)
        for a in range(5):
            for b in range(5):
                m[a, b] = -c.flow[a][b] / c.heat[a]
        m[0, 0] += x[8] / c.heat[0]
        m[4, 4] -= x[9] / c.heat[4]
        heat = matrix([x[10] / c.heat[0], 0, 0, 0, 0])
        return lu_solve(m, (expm(m * x[11]) - eye(5)) * heat)[place]

    return rise


# what the modes lose where many of them cancel: at a surface that heat has not reached yet. As a share of what the
# conductor rises by
steps_of = [(*how, gain, slope, 30.0, t) for how in LEADS[::2] for gain, slope in ((0.1, 0.5), (0.0, 2.0))
            for t in (1e-3, 1.0, 30.0, 1e3, 1e5)]
law("straight_conductor", straight(0), more=steps_of, allowed=1e-12)
law("straight_surface", straight(4), more=[x for x in steps_of if x[11] >= 1.0],
    allowed=lambda value, x: 1e-12 * straight(0)(*map(mpf, x)) / abs(value))


def under(d, air, g, conductor):
    loss, low, high = marches.loss_law(d, air, mpf), mpf(0), conductor - air
    for _ in range(170):
        middle = (low + high) / 2
        low, high = (middle, high) if loss(middle) < g * (conductor - air - middle) else (low, middle)
    return low


# 2^-44 of the temperature in kelvin
law("surface_under", under, L(5e-3, 0.1), U(250, 320), L(0.5, 50), U(325, 500), n=12,
    allowed=lambda value, x: 6e-14 * (value + mpf(x[1])) / value)
# stated: 2e-4 from 4 K on, 1e-3 from 1 K on, 0.03 K below
law("surface_table", lambda d, air, rise: marches.loss_law(d, air, mpf)(rise), L(5e-3, 0.1), U(250, 320), L(0.01, 900),
    n=40, allowed=lambda _, x: 2e-4 if x[2] > 4 else 1e-3 if x[2] > 1 else 0.03 / x[2])


# ---- sources: straight, ellipse, Hermite's cubic through measured points with the weighted harmonic mean of the secants
MEASURED = [(0, 80), (50, 60), (150, 32), (250, 20), (300, 0)]


def secants():
    return [mpf(u1 - u0) / (i1 - i0) for (i0, u0), (i1, u1) in zip(MEASURED, MEASURED[1:])]


def measured(amps):
    s = secants()
    widths = [i1 - i0 for (i0, _), (i1, _) in zip(MEASURED, MEASURED[1:])]
    slopes = [s[0]]
    for a, b, before, behind in zip(s, s[1:], widths, widths[1:]):
        p, q = 2 * behind + before, behind + 2 * before
        slopes.append((p + q) / (p / a + q / b))
    slopes.append(s[-1])
    k = next(k for k in range(len(s)) if amps <= MEASURED[k + 1][0])
    (i0, u0), (i1, u1) = MEASURED[k], MEASURED[k + 1]
    t, w = (amps - i0) / (i1 - i0), i1 - i0
    return (1 - t) ** 2 * (1 + 2 * t) * u0 + t * t * (3 - 2 * t) * u1 + t * (1 - t) * w * ((1 - t) * slopes[k] -
                                                                                       t * slopes[k + 1])


def met(a, b):
    low, high = mpf(0), mpf(300)
    for _ in range(170):
        middle = (low + high) / 2
        low, high = (middle, high) if measured(middle) > a + b * middle else (low, middle)
    return low


def on_ellipse(u, i, a, b):  # (a + b x)^2/u^2 + x^2/i^2 = 1
    p, q, r = b * b / u**2 + 1 / i**2, a * b / u**2, a * a / u**2 - 1
    return (-q + sqrt(q * q - p * r)) / p


# 2^-44 of the place along the line
law("meeting_on_straight", lambda u, i, a, b: (u - a) / (b + u / i), U(50, 90), U(100, 600), U(5, 40), L(1e-4, 0.1),
    allowed=1e-12)
law("meeting_on_ellipse", on_ellipse, U(50, 90), U(100, 600), U(5, 40), L(1e-4, 0.1), allowed=1e-12)
law("meeting_on_measured", met, U(0, 70), L(1e-4, 0.1), n=14, allowed=1e-12)


def top(f, low, high):
    for _ in range(260):
        a, b = low + (high - low) / 3, high - (high - low) / 3
        low, high = (a, high) if f(a) < f(b) else (low, b)
    return f(low)


# stated: 1e-8 of the power
law("most_power_straight", lambda u, i: u * i / 4, U(10, 100), L(10, 1000), allowed=1e-8)
law("most_power_ellipse", lambda u, i: u * i / 2, U(10, 100), L(10, 1000), allowed=1e-8)
law("most_power_measured",
    lambda: max(top(lambda i: i * measured(i), mpf(a), mpf(b)) for (a, _), (b, _) in zip(MEASURED, MEASURED[1:])),
    more=[()], allowed=1e-8)


# ---- small networks: three bodies in a row, by the exponential of their matrix; a steady state by halving
def three(c1, c2, c3, g12, g23, sink, watts, slope, on, rest):
    c = (c1, c2, c3)
    cold = matrix([[-g12, g12, 0], [g12, -g12 - g23, g23], [0, g23, -g23 - sink]])
    hot = cold.copy()
    hot[0, 0] += slope
    for a in range(3):
        for b in range(3):
            cold[a, b] /= c[a]
            hot[a, b] /= c[a]
    heat = matrix([watts / c1, 0, 0])
    grows, falls = expm(hot * on), expm(cold * rest)
    gained = lu_solve(hot, (grows - eye(3)) * heat)
    start = lu_solve(eye(3) - falls * grows, falls * gained)
    end = grows * start + gained
    mean = (lu_solve(hot, end - start - heat * on) + lu_solve(cold, start - end)) / (on + rest)
    return start[0], end[0], mean[0]


# rises of 80 K and less; stated: where current begins and ends 0.1 K, means 1e-3 K, where heat grows with the rise 1e-2 K
bodies = [(40.0, 300.0, 900.0, 1.5, 2.0, 0.8, w, grows, share * period, (1 - share) * period)
          for period, w in ((1.0, 40.0), (60.0, 40.0), (600.0, 37.0), (20000.0, 25.0), (1e6, 25.0))
          for share in (0.2, 0.6, 0.95) for grows in (0.0, 0.1)]
for which, number, kelvin in (("start_of_on", 0, 0.1), ("end_of_on", 1, 0.1), ("mean", 2, 1e-3)):
    law("network_" + which, lambda *x, number=number: three(*x)[number],
        more=[b for b in bodies if which != "start_of_on" or three(*map(mpf, b))[0] > 5],
        allowed=lambda value, x, k=kelvin: (10 * k if k < 0.01 and x[7] > 0 else k) / value)


def curved(c1, c2, c3, g12, g23, a, b, c, watts, grows):
    low, high = mpf(0), mpf(1000)
    for _ in range(170):
        x = (low + high) / 2
        lost = x * (a + b * sqrt(x) + c * x)
        first = x + lost / g23 + lost / g12
        made = watts * (1 + grows * (sqrt(1 + first**2) - 1))
        low, high = (x, high) if lost < made else (low, x)
    lost = low * (a + b * sqrt(low) + c * low)
    return low + lost / g23 + lost / g12


# residual below 1e-12 of the heat made, or a last step of 1e-11 of the rise
law("network_steady", curved, C(40.0), C(300.0), C(900.0), L(0.5, 5), L(0.5, 5), U(0.3, 1), U(0.01, 0.1), L(1e-4, 1e-2),
    L(5, 60), L(1e-5, 2e-3), n=14, allowed=1e-11)


def shared(r1, k1, r2, k2, r3, k3, amps):
    def current(volts, r, k):  # r i + k i^3 = volts
        low, high = mpf(0), amps
        for _ in range(170):
            i = (low + high) / 2
            low, high = (i, high) if i * (r + k * i * i) < volts else (low, i)
        return low

    low, high = mpf(0), amps * (r1 + k1 * amps**2)
    for _ in range(170):
        volts = (low + high) / 2
        low, high = (volts, high) if sum(current(volts, *w) for w in ((r1, k1), (r2, k2), (r3, k3))) < amps else (low, volts)
    return current(low, r1, k1)


# sums of volts round each loop below 1e-13 of the largest drop in it
law("shared_current", shared, L(1e-4, 1e-1), L(1e-9, 1e-6), L(1e-4, 1e-1), L(1e-9, 1e-6), L(1e-4, 1e-1), L(1e-9, 1e-6),
    L(1, 500), n=8, allowed=1e-12)

# ---- sums and integrals. Stated: 1e-4 for a curved line
law("rise_time_on_ellipse",
    lambda l, a, b, u, i, arc: quad(lambda x: l / (u * sqrt(1 - (x / i) ** 2) - arc), [a, (a + b) / 2, b]), L(1e-5, 1e-3),
    U(0, 50), U(60, 200), U(60, 90), U(300, 500), U(15, 30), n=16, allowed=1e-4)


# odd harmonics 2 (2/pi/n)^2 of a square, their heat by the exact law; above the last one summed by the law's expansion
def square(f, dc):
    x, last = sqrt(f * MU0 / dc), 1201
    total = sum(8 / (pi * n) ** 2 * (1 + more_of(x * sqrt(mpf(n))).real) for n in range(1, last, 2))
    beyond = lambda power: mpf(2) ** -power * zeta(power, mpf(last) / 2)
    return total + 8 / pi**2 * (x / 2 * beyond(mpf(1.5)) + beyond(2) / 4 + 3 / (32 * x) * beyond(mpf(2.5)))


law("square_wave_ratio", square, more=[(f, dc) for f in (50.0, 200.0) for dc in (1e-4, 4e-4, 2e-3)], allowed=1e-5,
    marched=True)


def settled_less(rate, time):  # of a mode, its mean over a stay from the cold
    return -(1 - exp(-rate * time)) / (rate * rate * time)


def bar(C, G, time, k, heat, length):  # sums of 1/(j^2 + c^2) and its square are known; the rest dies away
    turn = k / heat * (2 * pi / length) ** 2
    c = sqrt(G / C / turn)
    first = (pi * c * coth(pi * c) - 1) / (2 * c * c)
    second = pi * coth(pi * c) / (4 * c**3) + (pi / sinh(pi * c)) ** 2 / (4 * c * c) - 1 / (2 * c**4)
    total, n = first / turn - second / turn**2 / time, 1
    while True:
        rate = turn * n * n + G / C
        total += exp(-rate * time) / (rate * rate * time)
        if rate * time > 110:
            return 2 / C * total
        n += 1


# stated: 1e-6 of the settled rise at the weld, L^2/(12 a C), for a stay of 1e-3 L^2/a or longer
law("bar_over_mean", bar, L(100, 1e4), L(0.05, 5), L(60, 1e5), U(15, 60), L(3e6, 4e6), L(0.1, 2), n=16,
    where=lambda C, G, t, k, heat, length: t > 1e-3 * length**2 * heat / k,
    allowed=lambda value, x: 1e-6 * x[5] ** 2 * x[4] / x[3] / (12 * x[0]) / abs(value))
ZEROS = [besseljzero(1, n) for n in range(1, 401)]
AT_RIM = [besselj(0, z) ** 2 for z in ZEROS]


def disc(C, G, time, k, heat, thick, rim, away):
    over = away / rim
    total = (log(1 / over) + over**2 / 2 - mpf(3) / 4) / (2 * pi * k * thick)
    for z, at_rim in zip(ZEROS, AT_RIM):
        even = k / heat * (z / rim) ** 2
        rate = even + G / C
        total += besselj(0, z * over) / at_rim / C * (1 / rate - 1 / even + settled_less(rate, time))
    return total


def plate(thick, rim, away, loss, time, k=45.0, heat=3.8e6):
    return (heat * math.pi * rim**2 * thick, loss, time, k, heat, thick, rim, away)


# stated: 5e-5 of 1/(2 pi k d), for a stay of 0.02 R^2/a or longer
law("disc_over_mean", disc, marched=True, allowed=lambda value, x: 5e-5 / (2 * math.pi * x[3] * x[5]) / abs(value),
    more=[plate(d, r, a * r, g, t) for d, r in ((0.01, 0.2), (0.003, 0.5)) for a in (0.05, 0.3) for g in (0.0, 2.0)
          for t in (120.0, 500.0, 3600.0) if t > 0.02 * r * r / 45.0 * 3.8e6])

print("# made by rows.py with mpmath", __import__("mpmath").__version__, "at fifty digits")
print("law,inputs,high,low,allowed")
for row in rows:
    print(",".join(row))
