#!/usr/bin/python3
"""Welding loops marched in time to their settled period; prints the kept table.

Independent of the library: every station is built from the dimensions in its row, the laws are written again from their
equations, and the periodic state is found by marching whole periods, not by any balance of means. One vector of
temperatures holds the whole loop: leads as cells along their length with the covering cut into rings, joints as bodies,
clamps as five places and a patch of the work. TR-BDF2 (implicit, second order, L-stable) with steps that grow from
every switching on; banded matrices by LAPACK.

    /usr/bin/python3 march.py > outputs.csv
    /usr/bin/python3 march.py --check outputs.csv
    /usr/bin/python3 march.py --refine N [id ...]  # largest change by halved cells, rings, steps; N stations
    /usr/bin/python3 march.py --suite N [id ...]   # a settled period again by LSODA of SciPy; N stations
"""
import csv
import math
import pathlib
import platform
import sys
import time

import numpy as np
import scipy
import scipy.sparse
from scipy.integrate import solve_ivp
from scipy.linalg.lapack import dgbtrf, dgbtrs
from scipy.special import kv

ZERO = 273.15
T20 = 293.15
LORENZ, SIGMA, GRAVITY = 2.44e-8, 5.670374419e-8, 9.80665

# ------------------------------------------------------------------------------------------------------------- metals


class Metal:
    def __init__(self, name, nohm, alpha, density, heat, conduct, softening, melting):
        self.name, self.rho20, self.alpha = name, nohm * 1e-9, alpha
        self.density, self.heat, self.k = density, heat, conduct
        self.softening, self.melting = softening + ZERO, melting + ZERO

    def rho(self, t):
        return self.rho20 * max(0.01, 1.0 + self.alpha * (t - T20))

    def per_volume(self):
        return self.density * self.heat


COPPER = Metal("copper", 1e3 / 58.0, 0.00393, 8890, 386, 394, 190, 1084)
BRASS = Metal("brass", 61.6, 0.0017, 8530, 377, 121, 300, 915)
STEEL = Metal("steel", 143, 0.0039, 7870, 448, 50, 500, 1480)
ALUMINIUM = Metal("aluminium", 28.264, 0.00403, 2705, 900, 234.2, 150, 646)
METALS = {m.name: m for m in (COPPER, BRASS, STEEL, ALUMINIUM)}

# force law: micro-ohm at 1 kgf; geometric mean where a range is published
PAIRS = {
    ("copper", "steel"): 3100.0, ("brass", "steel"): 3000.0, ("steel", "steel"): 7600.0,
    ("copper", "copper"): math.sqrt(80.0 * 140.0), ("copper", "brass"): math.sqrt(370.0 * 380.0),
    ("brass", "brass"): 670.0, ("aluminium", "aluminium"): math.sqrt(3000.0 * 6700.0), ("aluminium", "steel"): 4400.0,
    ("aluminium", "brass"): 1900.0, ("aluminium", "copper"): 980.0,
}
TOOTHED, BUSBAR = 0.7, 0.6
SURFACES = {"clean": 1.0, "oxidized": 2.0, "greasy": 1.1, "galvanized": 0.6, "light_rust": 5.0, "heavy_rust": 50.0,
            "mill_scale": 15.0, "mill_scale_bitten": 3.0, "spatter_covered": 4.0, "painted_pierced": 20.0}


def force_law(first, second, exponent, newton, surface):
    k = PAIRS.get((first.name, second.name)) or PAIRS[(second.name, first.name)]
    return (0.102 * newton) ** exponent / (1e-6 * k * SURFACES[surface])


# ---------------------------------------------------------------------------------------------------------------- air


def air(t):
    """density, kinematic viscosity, thermal diffusivity, conductivity at sea level"""
    t15 = t * np.sqrt(t)

    def vibration(theta):
        x = theta / t
        return x * x * np.exp(-x) / (1.0 - np.exp(-x)) ** 2

    cp = 287.05 * (3.5 * (0.781 + 0.2095) + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6))
    density = 101325.0 / (287.05 * t)
    viscosity = 1.458e-6 * t15 / (t + 110.4)
    conduct = 2.64638e-3 * t15 / (t + 245.4 * 10.0 ** (-12.0 / t))
    return density, viscosity / density, conduct / (density * cp), conduct


def cylinder(t, around, diameter, emissivity):
    """W/(m2 K) of a cylinder in still air: Churchill and Chu, full form, and radiation"""
    film = 0.5 * (t + around)
    _, nu, diffusivity, k = air(film)
    rayleigh = GRAVITY / film * np.abs(t - around) * diameter**3 / (nu * diffusivity)
    prandtl = nu / diffusivity
    nusselt = (0.60 + 0.387 * rayleigh ** (1 / 6) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
    return nusselt * k / diameter + emissivity * SIGMA * (t + around) * (t * t + around * around)


def body_flux(t, around, diameter, emissivity):
    """W/m2; the coefficient below a rise of 1 K is that of 1 K"""
    rise = t - around
    shown = np.where(rise < 0.0, np.minimum(rise, -1.0), np.maximum(rise, 1.0))
    return cylinder(around + shown, around, diameter, emissivity) * rise


def cable_loss(t, around, diameter):
    """W/m of a cable alone: IEC 60287 in free air of 30 degC, its radiation that of the air around, and no less
    convection than the cylinder's law gives"""
    rise = t - around
    calculated = cylinder(t, around, diameter, 0.9) * rise
    radiated = 0.9 * SIGMA * ((around + rise) ** 4 - around**4)
    base = 303.15
    by_iec = (0.21 / diameter**0.6 + 3.94) * rise * np.abs(rise) ** 0.25
    by_iec = by_iec - 0.9 * SIGMA * ((base + rise) ** 4 - base**4) + radiated
    is_more = np.where(rise > 0.0, by_iec > calculated, by_iec < calculated)
    return math.pi * diameter * np.where(is_more, by_iec, calculated)


def disc_fin(metal, thickness, around):
    h = float(cylinder(np.float64(around + 20.0), around, 0.1, 0.8))
    kt = metal.k * thickness
    mr = math.sqrt(2.0 * h / kt) * 0.010
    return 2.0 * math.pi * kt * mr * kv(1, mr) / kv(0, mr)


# ------------------------------------------------------------------------------------------------------------- joints


class Contact:
    """A joint's voltage over its current: ohmic with hot spots, levelling between softening and melting drop."""

    def __init__(self, cold, first, second):
        self.cold, self.metals = cold, (first, second)
        self.melting = min(first.melting, second.melting)

    def limits(self, t):
        def reach(spot):
            return 2.0 * math.sqrt(LORENZ * max(0.0, spot * spot - t * t))
        return min(reach(m.softening) for m in self.metals), min(reach(m.melting) for m in self.metals)

    def volts(self, amps, t, share=1.0):
        """at the bulk's temperature, its cold conductance times `share`"""
        t = min(t, self.melting - 1e-3)
        a, b = self.metals
        now = a.rho(t) + b.rho(t)
        x = amps / (share * self.cold) * now / (a.rho20 + b.rho20)
        soft, melt = self.limits(t)
        c = min(1.0, 2.0 / 3.0 * (a.rho20 * a.alpha + b.rho20 * b.alpha) / now * t)
        scale = 2.0 * math.sqrt(LORENZ) * t

        def asked(v):  # the cold current over conductance that gives v
            size = math.sqrt((melt - soft) / (melt - v)) if v > soft else 1.0
            return v * size / (1.0 + c * (math.sqrt(1.0 + (v / scale) ** 2) - 1.0))

        low, high = 0.0, melt * (1.0 - 1e-12)
        if asked(high) <= x:
            return high
        v = min(x, 0.9 * melt)
        for _ in range(80):
            miss = asked(v) - x
            if miss > 0.0:
                high = v
            else:
                low = v
            d = 1e-6 * melt
            if high - d > v > d:
                step = miss * 2.0 * d / (asked(v + d) - asked(v - d))
                if abs(step) < 1e-13:
                    return v - step
                v -= step
            if not low < v < high:
                v = 0.5 * (low + high)
            if high - low < 1e-14:
                break
        return v


# ------------------------------------------------------------------------------------------------------------- sizes

CRIMPS = [(26, 3, 8), (24, 4.5, 8), (22, 9, 7), (20, 11, 6), (18, 16, 5), (16, 22, 7), (14, 32, 6), (12, 41, 5),
          (10, 55, 5), (8, 73, 5), (6, 101, 5), (4, 135, 5), (2, 181, 5), (1, 211, 5), (0, 245, 5), (-1, 283, 5),
          (-2, 328, 5), (-3, 380, 5)]  # gauge (0 is 1/0), A, mV


def gauge_area(n):
    return math.pi / 4.0 * (0.005 * 92.0 ** ((36 - n) / 39.0) * 0.0254) ** 2


def size_area(scale, number):
    if scale == "mm2":
        return float(number) * 1e-6
    n = float(number)
    return gauge_area(n if scale == "awg" else 1 - n)


def sound_crimp(area):
    """typical ohm of one crimp"""
    rows = [(math.log(gauge_area(n)), math.log(mv * 1e-3 / amps)) for n, amps, mv in CRIMPS]
    x = math.log(area)
    above = 1
    while above + 1 < len(rows) and rows[above][0] < x - 1e-12:
        above += 1
    (xa, ya), (xb, yb) = rows[above - 1], rows[above]
    return 0.4 * math.exp(ya + (x - xa) / (xb - xa) * (yb - ya))


LEADS = [(10, 4.7, 8.7, 1.91), (16, 5.9, 10.15, 1.21), (25, 7.4, 11.5, 0.78), (35, 8.8, 12.75, 0.554),
         (50, 10.45, 15.0, 0.386), (70, 12.45, 17.25, 0.272), (95, 14.05, 19.5, 0.206), (120, 16.0, 21.5, 0.161),
         (150, 17.8, 23.8, 0.129), (185, 19.6, 26.0, 0.106)]  # mm2, mm, mm, ohm/km at 20 degC
RUBBER_K, RUBBER_HEAT = 0.2, 2.0e6


class Lead:
    def __init__(self, scale, number, length, water=0.0):
        self.area, self.length, self.water = size_area(scale, number), float(length), water
        mm2 = self.area * 1e6
        row = next((r for r in LEADS if scale == "mm2" and r[0] == float(number)), None)
        if row:
            self.inner, self.outer = row[1] * 1e-3, row[2] * 1e-3
            self.r20 = row[3] * 1e-3
        else:
            above = 1
            while above + 1 < len(LEADS) and LEADS[above][0] < mm2:
                above += 1
            a, b = LEADS[above - 1], LEADS[above]
            x = math.log(mm2 / a[0]) / math.log(b[0] / a[0])
            self.inner, self.outer = (1e-3 * a[i] * (b[i] / a[i]) ** x for i in (1, 2))
            if scale == "mm2":
                raise ValueError("no nominal size")
            increment = 0.04 if self.area <= gauge_area(4) * 1.000001 else 0.05 if self.area <= gauge_area(
                0) * 1.000001 else 0.06  # up to 300 kcmil
            self.r20 = COPPER.rho20 * (1.0 + increment) / self.area


def strand_diameter(area):
    return math.sqrt(area * 4.0 / math.pi / 0.60)


# ------------------------------------------------------------------------------------------------------------- clamps

# A, mm2 of cable, surface m2, kg, arms micro-ohm, jaw mm2, spring wire mm, arm mm, hand N m, screw mm, pitch mm
CLAMPS = [(100, 35, 0.020, 0.30, 12, 60, 4.5, 50, 3.0, 12, 3), (200, 50, 0.028, 0.45, 10, 90, 4.5, 45, 4.0, 12, 3),
          (300, 70, 0.036, 0.60, 8, 120, 5.6, 60, 5.0, 14, 3), (400, 95, 0.046, 0.85, 7, 160, 6.1, 58, 6.0, 16, 4),
          (500, 120, 0.058, 1.15, 6, 200, 7.0, 70, 8.0, 16, 4), (600, 120, 0.058, 1.15, 6, 200, 7.0, 70, 8.0, 16, 4),
          (800, 185, 0.078, 1.90, 4, 280, 8.25, 75, 10.0, 18, 4)]
CABLE_KG = {35: 0.440, 50: 0.600, 70: 0.830, 95: 1.110, 120: 1.370, 185: 2.050}
PLACES = ("jaw", "body", "spring", "handle", "entry")


class Clamp:
    """five places: surface, diameter, emissivity, capacity; links; jaws and termination"""

    def __init__(self, tokens, options, beside_lug, around):
        kind = tokens[0]
        onto, work = METALS[options.get("onto", "steel")], float(options.get("work", 0.010))
        lost = float(options.get("lost", 0.0))
        shunt, spring_wire = 0.0, None
        if kind == "bolted":
            area = size_area(tokens[1], tokens[2])
            ratio = area / 50e-6
            root = math.sqrt(ratio)
            bolt = 0.008 if area <= 35e-6 * 1.000001 else 0.010 if area <= 95e-6 * 1.000001 else 0.012
            torque = {0.008: 20.0, 0.010: 40.0, 0.012: 70.0}[bolt]
            force, exponent, jaw, body, live = torque / (0.17 * bolt), BUSBAR, COPPER, COPPER, 1
            surface, mass, diameter, emissivity = 40e-4 * root, 0.06 * ratio, 0.015 * root, 0.3
            jaw_area, arms = 300e-6 * root, 0.0
            lengths = {"jaw": 0.020 * root, "body": 0.008 * root, "handle": 0.0, "entry": 0.025 * root}
            shunt_length = 0.084
            cable = area
        else:
            row = next(r for r in CLAMPS if r[0] == float(tokens[1]))
            cable, surface, mass = row[1] * 1e-6, row[2], row[3]
            arms, jaw_area, wire, arm = row[4] * 1e-6, row[5] * 1e-6, row[6] * 1e-3, row[7] * 1e-3
            jaw, body, exponent, diameter, emissivity = BRASS, BRASS, TOOTHED, 0.030, 0.8
            lengths = {"jaw": 0.5 * arm, "body": 0.5 * arm, "handle": 1.4 * arm, "entry": 0.4 * arm}
            shunt_length = 1.4 * arm
            if kind == "spring":
                live, spring_wire = 2, wire
                held = 2.5 * (5.0 * CABLE_KG[row[1]] + 0.4) * GRAVITY / (2.0 * 0.15)
                force = max(held, 250.0)
                shunt = 0.5 * cable
            else:
                live, mass, surface = 1, 1.4 * mass, 0.9 * surface
                mean, lead = (row[9] - 0.5 * row[10]) * 1e-3, row[10] * 1e-3
                f = 0.15 / math.cos(math.radians(15.0))
                thread = 0.5 * mean * (lead + f * math.pi * mean) / (math.pi * mean - f * lead)
                force = row[8] / (thread + 0.5 * 0.15 * 0.010)
        whole = sum(lengths.values())
        section = mass / (body.density * whole)
        self.bodies = {}
        for place, part in lengths.items():
            share = part / whole
            self.bodies[place] = (share * surface, diameter, emissivity, max(0.1, share * mass * body.heat))

        def between(a, b, of_section):
            return body.k * of_section * section / (0.5 * (lengths[a] + lengths[b]))

        self.links = [("jaw", "body", between("jaw", "body", 1.0)), ("body", "handle", between("body", "handle", 1.0)),
                      ("body", "entry", between("body", "entry", 0.5 if live > 1 else 1.0))]
        if shunt > 0.0:
            self.links.append(("jaw", "entry", COPPER.k * shunt / shunt_length))
        self.slope = 0.0
        if spring_wire:
            coil, coils, turns, seat = 6.0 * spring_wire, 2, 4.0, 0.020
            k_air = float(air(np.float64(around))[3])
            wire_section = math.pi / 4.0 * spring_wire**2
            wire_length = coils * turns * math.pi * coil
            self.bodies["spring"] = (coils * turns * math.pi * (coil + spring_wire) * spring_wire, coil + spring_wire,
                                     0.8, STEEL.per_volume() * wire_length * wire_section)
            under = k_air * seat * spring_wire / 1e-4
            along = STEEL.k * wire_section / (0.5 * coil)
            pin = k_air * coils * turns * math.pi * (coil - spring_wire) * spring_wire / 2e-3
            seat_g = 2.0 * coils * under * along / (under + along) + pin
            # on the pivot, where the line between the middles of reach and handles passes it
            behind = lengths["body"] / (lengths["body"] + lengths["handle"])
            self.links.append(("body", "spring", (1.0 - behind) * seat_g))
            self.links.append(("handle", "spring", behind * seat_g))
            self.slope = 3.6e-4
        else:
            self.bodies["spring"] = (0.0, diameter, emissivity, 0.1)
            self.links.append(("body", "spring", between("body", "handle", 1.0)))
        self.exponent, self.left = exponent, 1.0 - lost
        self.jaws = Contact(live * force_law(jaw, onto, exponent, force, options.get("surface", "clean")), jaw, onto)
        if beside_lug:
            arms = max(arms, 0.1e-6)
            series = arms
        else:
            series = sound_crimp(cable) + arms
        self.termination = Contact(1.0 / series, COPPER, body)
        self.outer = 1.0 / series
        self.arms_share = min(1.0, arms / series)
        self.faces = live * jaw_area
        # a third of the jaws' outside looks at the work; 1.5 mm of air where it does not touch
        inner = 0.0 if kind == "bolted" else self.bodies["jaw"][0] / 3.0
        self.bodies["jaw"] = (self.bodies["jaw"][0] - inner, *self.bodies["jaw"][1:])
        self.beside = max(0.0, inner - self.faces)
        self.grey = 1.0 / (1.0 / emissivity + 1.0 / 0.8 - 1.0)
        self.sink = disc_fin(onto, work, around)
        self.patch = math.pi * 0.010**2 * work * onto.per_volume()

    def share(self, spring):
        return (self.left * max(0.0, 1.0 - self.slope * (spring - T20))) ** self.exponent


# ------------------------------------------------------------------------------------------------------------ network


class Grid:
    """how finely leads and time are cut"""

    def __init__(self, first=0.003, growth=1.14, reach=5.0, rings=8, step=0.05, widen=1.2, least_steps=15):
        self.first, self.growth, self.reach, self.rings = first, growth, reach, rings
        self.step, self.widen, self.least_steps = step, widen, least_steps


COARSE = Grid(0.015, 1.6, 5.0, 6, 0.2, 1.5, 8)
USUAL = Grid()
FINE = Grid(0.0015, 1.068, 6.0, 16, 0.025, 1.095, 30)


def cell_widths(length, grid):
    half, widths = 0.5 * length, []
    width, at = grid.first, 0.0
    while at + width < half and at < grid.reach:
        widths.append(width)
        at += width
        width *= grid.growth
    rest = length - 2.0 * at
    # what is left in the middle: cells no wider than the next of the row
    count = max(1, math.ceil(rest / max(width, 1e-9))) if at < grid.reach else max(3, min(6, math.ceil(rest / width)))
    return np.array(widths + [rest / count] * count + widths[::-1])


class Element:
    """heat that depends on a few temperatures at once: `heat(temperatures, on)` gives W into each of `nodes`"""

    def __init__(self, nodes, heat):
        self.nodes, self.heat = nodes, heat


def split(token):
    fields = token.split(":")
    plain = [f for f in fields[1:] if "=" not in f]
    return fields[0], plain, dict(f.split("=") for f in fields[1:] if "=" in f)


class Loop:
    def __init__(self, row, grid=USUAL):
        self.grid = grid
        self.id = row["id"]
        self.amps, self.on, self.period = float(row["amps"]), float(row["on_s"]), float(row["period_s"])
        self.air = float(row["air_c"]) + ZERO
        self.tokens = row["path"].split()
        self.capacity, self.links, self.bodies, self.elements, self.gas = [], [], [], [], []
        self.leads, self.water, self.faces = [], [], []
        self.parts = []  # of each token: kind, places {name: node}, lead index or None, drop(T) without its lead
        self.contacts = []  # (contact, node, share function or None): for the check of their drops
        self.build()
        self.finish()

    # -- making nodes

    def node(self, capacity, surface=None):
        self.capacity.append(capacity)
        n = len(self.capacity) - 1
        if surface and surface[0] > 0.0:
            self.bodies.append((n,) + surface)
        return n

    def add_lead(self, lead):
        widths = cell_widths(lead.length, self.grid)
        rings = self.grid.rings
        first = len(self.capacity)
        # points of the covering at even steps of ln r, the first at the strands, the last at the surface; each holds
        # the covering to half way to its neighbours
        points = lead.inner * (lead.outer / lead.inner) ** (np.arange(rings + 1) / rings)
        edges = np.concatenate([[lead.inner], np.sqrt(points[:-1] * points[1:]), [lead.outer]])
        heat = RUBBER_HEAT * math.pi / 4.0 * np.diff(edges**2)
        heat[0] += COPPER.per_volume() * lead.area
        self.capacity += list(np.outer(widths, heat).ravel())
        conductors = first + np.arange(len(widths)) * (rings + 1)
        ring = rings * 2.0 * math.pi * RUBBER_K / math.log(lead.outer / lead.inner)
        for n, w in zip(conductors, widths):
            self.links += [(n + i, n + i + 1, ring * w) for i in range(rings)]
            if lead.water:
                self.water.append((n, lead.water * w))
        axial = COPPER.k * lead.area
        self.links += [(a, b, axial / (0.5 * (v + w)))
                       for a, b, v, w in zip(conductors[:-1], conductors[1:], widths[:-1], widths[1:])]
        self.leads.append({"lead": lead, "widths": widths, "conductors": conductors, "faces": []})
        return len(self.leads) - 1

    def end_of(self, index, which):
        """conductor at an end and the resistance (K/W) from there to the end's face"""
        lead = self.leads[index]
        at = 0 if which == "start" else -1
        return int(lead["conductors"][at]), 0.5 * lead["widths"][at] / (COPPER.k * lead["lead"].area)

    def series(self, contacts, node, extra=0.0, kept=0.0):
        """a body with contacts in series; of a drop `extra` besides the share `kept` stays in it"""
        def volts(t):
            return sum(c.volts(self.amps, t) for c in contacts)
        self.elements.append(Element([node], lambda t, on: [self.amps * (volts(t[0]) + kept * extra)] if on else [0.0]))
        self.contacts += [(c, node, None) for c in contacts]
        return lambda T: volts(T[node]) + extra

    def build(self):
        arc_at = self.tokens.index("arc")
        kinds = [split(t)[0] for t in self.tokens]
        ports = []  # of each part: (left, right), each None or ("body", node, outer) or ("lead", index, end)
        for i, token in enumerate(self.tokens):
            kind, plain, options = split(token)
            before = i < arc_at
            around = self.air
            part = {"kind": kind, "places": {}, "lead": None, "drop": lambda T: 0.0}
            left = right = None
            if kind == "cable":
                part["lead"] = self.add_lead(Lead(*plain))
                left, right = ("lead", part["lead"], "start"), ("lead", part["lead"], "end")
            elif kind in ("lug", "coupling"):
                area = size_area(plain[0], plain[1])
                strands = strand_diameter(area)
                if kind == "lug":
                    b = 1.3 * strands
                    body = (math.pi * b * 3 * b + 2 * (2 * b) ** 2, b, 0.22)
                    capacity = COPPER.per_volume() * (math.pi / 4 * b * b * 3 * b + (2 * b) ** 2 * 0.25 * b)
                    worse = (1.0 - float(options.get("missing", 0.0))) ** -3
                    bolt = 0.008 if area <= 25e-6 * 1.000001 else 0.010 if area <= 95e-6 * 1.000001 else 0.012
                    torque = float(options.get("torque", {0.008: 20.0, 0.010: 40.0, 0.012: 70.0}[bolt]))
                    palm = force_law(COPPER, BRASS, BUSBAR, torque / (0.17 * bolt), options.get("palm", "clean"))
                    contacts = [Contact(1.0 / (worse * sound_crimp(area)), COPPER, COPPER),
                                Contact(palm, COPPER, BRASS)]
                    outer = palm
                else:
                    across, along = 3 * strands, 10 * strands
                    body = (math.pi * across * along, across, 0.9)
                    capacity = 0.5 * BRASS.per_volume() * math.pi / 4 * across**2 * along
                    usual = 300.0 if area <= 25e-6 * 1.000001 else 500.0 if area <= 50e-6 * 1.000001 else 800.0
                    plug = force_law(BRASS, BRASS, BUSBAR, float(options.get("force", usual)),
                                     options.get("surface", "clean"))
                    crimps = 0.5 / sound_crimp(area)
                    contacts = [Contact(plug, BRASS, BRASS), Contact(crimps, COPPER, COPPER)]
                    outer = 2.0 * crimps
                n = self.node(capacity, body)
                part["places"]["body"] = n
                part["drop"] = self.series(contacts, n)
                left = right = ("body", n, outer)
            elif kind == "holder":
                rated = float(plain[0])
                mm2 = next((a for top, a in ((150, 25), (200, 35), (300, 50), (400, 70), (500, 95)) if rated <= top),
                           120)
                crimp = 1.0 / sound_crimp(mm2 * 1e-6)
                points = 12  # of two grooved jaws on the rod, which press 1.6 N for each ampere of the rating
                jaws = points * force_law(BRASS, STEEL, TOOTHED, 1.6 * rated / points, options.get("surface", "clean"))

                def make_core():
                    return self.node(0.2 * BRASS.per_volume() * math.pi / 4 * 0.035**2 * 0.220,
                                     (math.pi * 0.035 * 0.080, 0.035, 0.9))

                def make_handle():
                    return self.node(0.140 * math.pi / 4 * (0.035**2 - 0.027**2) * 2.0e6,
                                     (math.pi * 0.035 * 0.140, 0.035, 0.9))

                if before:
                    core = make_core()
                    handle = make_handle()
                else:
                    handle = make_handle()
                    core = make_core()
                k_air = float(air(np.float64(around))[3])
                self.links.append((core, handle, 0.140 * 2 * math.pi /
                                   (math.log(35 / 27) / 0.25 + math.log(27 / 23) / k_air)))
                part["places"] = {"core": core, "handle": handle}
                part["drop"] = self.series([Contact(jaws, BRASS, STEEL), Contact(crimp, COPPER, COPPER)], core)
                left = right = ("body", core, crimp)
            elif kind in ("gun", "torch"):
                water = 20.0 if kind == "torch" and plain[0] == "water" else 0.0
                mm2 = 50 if kind == "gun" else 16 if water else 25
                lead = Lead("mm2", mm2, plain[0] if kind == "gun" else plain[1], water)

                def make_head():
                    return self.node(0.5 * BRASS.per_volume() * math.pi / 4 * 0.022**2 * 0.180,
                                     (math.pi * 0.022 * 0.180, 0.022, 0.22))

                if before:
                    part["lead"] = self.add_lead(lead)
                    head = make_head()
                else:
                    head = make_head()
                    part["lead"] = self.add_lead(lead)
                part["places"]["head"] = head
                crimps = Contact(0.5 / sound_crimp(lead.area), COPPER, COPPER)
                if kind == "gun":
                    tip = 0.20 * min(1.0, self.amps / 50.0)
                    rho = 0.5 * (STEEL.rho20 + STEEL.rho(STEEL.melting))
                    wire = rho * 0.015 / (math.pi / 4 * 0.0012**2) * self.amps
                    body_drop = self.series([crimps], head, tip, 0.5)
                    part["drop"] = lambda T, f=body_drop, w=wire: f(T) + w
                    self.gas.append((head, 0.015 / 60 * 1.6 * 520))
                else:
                    part["drop"] = self.series([crimps, Contact(1.0 / 150e-6, COPPER, COPPER)], head)
                    self.gas.append((head, 0.008 / 60 * 1.6 * 520))
                cell, ahead = self.end_of(part["lead"], "end" if before else "start")
                neck = 0.15 / (COPPER.k * lead.area)
                self.links.append((cell, head, 1.0 / (ahead + neck)))
                share = ahead / (ahead + neck)
                self.leads[part["lead"]]["faces"].append((cell, 1.0 - share, head, share))
                left = ("lead", part["lead"], "start") if before else None
                right = None if before else ("lead", part["lead"], "end")
            elif kind == "clamp":
                cable_side = i - 1 if before else i + 1
                beside_lug = any(0 <= j < len(kinds) and kinds[j] == "lug" for j in (i - 1, i + 1))
                clamp = Clamp(plain, options, beside_lug, around)
                order = ["patch", "jaw", "spring", "handle", "body", "entry"]
                for place in (reversed(order) if before else order):
                    if place == "patch":
                        part["places"][place] = self.node(clamp.patch)
                    else:
                        surface, diameter, emissivity, capacity = clamp.bodies[place]
                        part["places"][place] = self.node(capacity, (surface, diameter, emissivity))
                at = part["places"]
                self.links += [(at[a], at[b], g) for a, b, g in clamp.links]
                self.water.append((at["patch"], clamp.sink))
                part["drop"] = self.clamp_heat(clamp, at)
                entry = ("body", at["entry"], clamp.outer)
                left, right = (entry, None) if before else (None, entry)
                assert cable_side in (i - 1, i + 1)
            elif kind == "contact":
                first, second = METALS[options.get("first", "steel")], METALS[options.get("second", "steel")]
                g = force_law(first, second, TOOTHED, float(options["force"]), options.get("surface", "clean"))
                nodes = []
                for metal in (first, second):
                    n = self.node(math.pi * 0.010**2 * 0.010 * metal.per_volume())
                    self.water.append((n, disc_fin(metal, 0.010, around)))
                    nodes.append(n)
                part["places"] = {"first": nodes[0], "second": nodes[1]}
                part["drop"] = self.bare_contact(Contact(g, first, second), nodes)
            elif kind == "plate":
                length, width, thick = (float(x) for x in plain)
                metal = METALS[options.get("metal", "steel")]
                n = self.node(length * width * thick * metal.per_volume(), (2 * length * width, width, 0.8))
                part["places"]["plate"] = n

                def plate_volts(t, m=metal, f=length / (width * thick)):
                    return self.amps * m.rho(t) * f
                self.elements.append(Element(
                    [n], lambda t, on, v=plate_volts: [self.amps * v(t[0])] if on else [0.0]))
                part["drop"] = lambda T, v=plate_volts, n=n: v(T[n])
            self.parts.append(part)
            ports.append((left, right))
        for (_, right), (left, _) in zip(ports[:-1], ports[1:]):
            self.join(right, left)

    def join(self, one, other):
        if one is None or other is None:
            return
        if one[0] == "body" and other[0] == "body":
            a, b, g = one[1], other[1], max(one[2], other[2])

            def cross(t, on):
                w = LORENZ * 0.5 * (t[0] + t[1]) * g * (t[0] - t[1])
                return [-w, w]
            self.elements.append(Element([a, b], cross))
        elif one[0] == "lead" and other[0] == "lead":
            (a, ra), (b, rb) = self.end_of(one[1], one[2]), self.end_of(other[1], other[2])
            self.links.append((a, b, 1.0 / (ra + rb)))
            share = ra / (ra + rb)
            for lead in (one[1], other[1]):
                self.leads[lead]["faces"].append((a, 1.0 - share, b, share))
        else:
            lead, body = (one, other) if one[0] == "lead" else (other, one)
            cell, r = self.end_of(lead[1], lead[2])
            self.links.append((cell, body[1], 1.0 / r))
            self.leads[lead[1]]["faces"].append((body[1], 1.0, body[1], 0.0))

    def clamp_heat(self, clamp, at):
        amps = self.amps

        def jaws(t, on):
            jaw, patch, spring = t
            volts = clamp.jaws.volts(amps, jaw, clamp.share(spring))
            crossing = LORENZ * jaw * amps / volts + float(air(jaw)[3]) * clamp.faces / 1e-4
            mean = 0.5 * (jaw + patch)
            crossing += clamp.beside * (float(air(mean)[3]) / 1.5e-3 + 4.0 * clamp.grey * SIGMA * mean**3)
            half = 0.5 * amps * volts if on else 0.0
            over = crossing * (patch - jaw)
            return [half + over, half - over, 0.0]

        def termination(t, on):
            w = amps * clamp.termination.volts(amps, t[0]) if on else 0.0
            return [(1.0 - clamp.arms_share) * w, clamp.arms_share * w]

        self.elements.append(Element([at["jaw"], at["patch"], at["spring"]], jaws))
        self.elements.append(Element([at["entry"], at["body"]], termination))
        self.contacts += [(clamp.jaws, at["jaw"], lambda T: clamp.share(T[at["spring"]])),
                          (clamp.termination, at["entry"], None)]
        return lambda T: (clamp.jaws.volts(amps, T[at["jaw"]], clamp.share(T[at["spring"]])) +
                          clamp.termination.volts(amps, T[at["entry"]]))

    def bare_contact(self, contact, nodes):
        amps = self.amps

        def heat(t, on):
            mean = 0.5 * (t[0] + t[1])
            volts = contact.volts(amps, mean)
            over = LORENZ * mean * amps / volts * (t[1] - t[0])
            half = 0.5 * amps * volts if on else 0.0
            return [half + over, half - over]

        self.elements.append(Element(nodes, heat))
        self.contacts.append((contact, nodes[0], None))
        return lambda T: contact.volts(amps, 0.5 * (T[nodes[0]] + T[nodes[1]]))

    # -- arrays

    def finish(self):
        self.C = np.array(self.capacity, dtype=float)
        self.n = len(self.C)
        self.band = max(max(abs(a - b) for a, b, _ in self.links),
                        max(max(e.nodes) - min(e.nodes) for e in self.elements))
        kb = self.band
        # LAPACK's band: row kl + ku + i - j of column j, kl extra rows on top
        self.linear = np.zeros((3 * kb + 1, self.n), order="F")
        la, lb = np.array([l[0] for l in self.links]), np.array([l[1] for l in self.links])
        lg = np.array([l[2] for l in self.links])
        np.add.at(self.linear, (2 * kb, la), -lg)
        np.add.at(self.linear, (2 * kb, lb), -lg)
        np.add.at(self.linear, (2 * kb + la - lb, lb), lg)
        np.add.at(self.linear, (2 * kb + lb - la, la), lg)
        self.matrix = scipy.sparse.coo_matrix(
            (np.concatenate([lg, lg, -lg, -lg]),
             (np.concatenate([la, lb, la, lb]), np.concatenate([lb, la, la, lb]))), shape=(self.n, self.n)).tocsr()
        self.to_air = np.zeros(self.n)
        for n, g in self.water:
            self.to_air[n] += g
        self.to_gas = np.zeros(self.n)
        for n, g in self.gas:
            self.to_gas[n] += g
        bodies = self.bodies
        self.body_nodes = np.array([b[0] for b in bodies], dtype=int)
        self.body_area, self.body_across, self.body_emits = (np.array([b[i] for b in bodies]) for i in (1, 2, 3))
        rings = self.grid.rings
        self.conductors = np.concatenate([l["conductors"] for l in self.leads])
        self.surfaces = self.conductors + rings
        widths = [l["widths"] for l in self.leads]
        self.widths = np.concatenate(widths)
        self.cell_r20 = np.concatenate([w * l["lead"].r20 for w, l in zip(widths, self.leads)])
        self.cell_outer = np.concatenate([np.full(len(w), l["lead"].outer) for w, l in zip(widths, self.leads)])
        at = 0
        for l in self.leads:
            l["cells"] = slice(at, at + len(l["widths"]))
            at += len(l["widths"])

    def cell_ohms(self, T):
        return self.cell_r20 * (1.0 + COPPER.alpha * (T[self.conductors] - T20))

    def heat(self, T, share):
        """W into every node; `share` 1: current on, 0: off, between: the mean of both by that share"""
        out = self.matrix @ T - (self.to_air + share * self.to_gas) * (T - self.air)
        out[self.surfaces] -= self.widths * cable_loss(T[self.surfaces], self.air, self.cell_outer)
        out[self.body_nodes] -= self.body_area * body_flux(T[self.body_nodes], self.air, self.body_across,
                                                           self.body_emits)
        out[self.conductors] += share * self.amps**2 * self.cell_ohms(T)
        for e in self.elements:
            w = self.of_element(e, [float(T[n]) for n in e.nodes], share)
            for n, x in zip(e.nodes, w):
                out[n] += x
        return out

    @staticmethod
    def of_element(e, t, share):
        if share == 1.0 or share == 0.0:
            return e.heat(t, share == 1.0)
        return [share * a + (1.0 - share) * b for a, b in zip(e.heat(t, True), e.heat(t, False))]

    def slopes(self, T, share):
        """of heat() by the temperatures, as a band"""
        kb, d = self.band, 0.01
        ab = self.linear.copy(order="F")
        ab[2 * kb] -= self.to_air + share * self.to_gas
        s, b = self.surfaces, self.body_nodes
        ab[2 * kb, s] -= self.widths * (cable_loss(T[s] + d, self.air, self.cell_outer) -
                                        cable_loss(T[s] - d, self.air, self.cell_outer)) / (2 * d)
        ab[2 * kb, b] -= self.body_area * (
            body_flux(T[b] + d, self.air, self.body_across, self.body_emits) -
            body_flux(T[b] - d, self.air, self.body_across, self.body_emits)) / (2 * d)
        ab[2 * kb, self.conductors] += share * self.amps**2 * self.cell_r20 * COPPER.alpha
        for e in self.elements:
            t = [float(T[n]) for n in e.nodes]
            for j, nj in enumerate(e.nodes):
                up, down = list(t), list(t)
                up[j] += d
                down[j] -= d
                for ni, a, c in zip(e.nodes, self.of_element(e, up, share), self.of_element(e, down, share)):
                    ab[2 * kb + ni - nj, nj] += (a - c) / (2 * d)
        return ab

    def factored(self, T, share, c_scale, j_scale):
        """LU of c_scale C - j_scale J"""
        ab = self.slopes(T, share) * (-j_scale)
        ab[2 * self.band] += c_scale * self.C
        lu, pivots, info = dgbtrf(ab, self.band, self.band, overwrite_ab=1)
        if info != 0:
            raise RuntimeError("singular")
        return lu, pivots

    def solve(self, lu, b):
        x, info = dgbtrs(lu[0], self.band, self.band, b, lu[1])
        if info != 0:
            raise RuntimeError("not solved")
        return x

    # -- states

    def mean_state(self, hottest=700.0):
        """steady state of the mean heat, climbed to from the air's temperature; None where it runs away"""
        share = self.on / self.period
        T = np.full(self.n, self.air)
        dt = 30.0
        for _ in range(400):
            lu = self.factored(T, share, 1.0, dt)
            new = T.copy()
            for _ in range(8):
                step = self.solve(lu, self.C * (T - new) + dt * self.heat(new, share))
                new = new + step
                if np.max(np.abs(step)) < 1e-7:
                    break
            if not np.all(np.isfinite(new)) or np.max(new) > hottest + ZERO:
                return None
            change = np.max(np.abs(new - T))
            T = new
            if change < 1e-6 and dt > 1e5:
                return T
            dt = min(dt * 2.0, 1e7)
        return None

    GAMMA = 2.0 - math.sqrt(2.0)
    W_MIDDLE = 1.0 / (6.0 * GAMMA * (1.0 - GAMMA))
    W_LAST = 0.5 - GAMMA * W_MIDDLE
    W_FIRST = 1.0 - W_MIDDLE - W_LAST

    def steps(self, whole):
        h, at, out = min(self.grid.step, whole / self.grid.least_steps), 0.0, []
        most = whole / self.grid.least_steps
        while at < whole * (1 - 1e-12):
            out.append(h)
            at += h
            h = min(h * self.grid.widen, most)
        scale = whole / at
        return [x * scale for x in out]

    def phase(self, T, whole, share, watch):
        g = self.GAMMA
        now = self.heat(T, share)
        for h in self.steps(whole):
            d = 0.5 * g * h
            lu = self.factored(T, share, 1.0, d)

            def newton(known, guess):
                y = guess
                for _ in range(12):
                    f = self.heat(y, share)
                    step = self.solve(lu, self.C * (known - y) + d * f)
                    y = y + step
                    if np.max(np.abs(step)) < 1e-8:
                        return y
                raise RuntimeError("step not solved: " + self.id)

            middle = newton(T + d * now / self.C, T)
            last = newton(middle / (g * (2 - g)) - T * (1 - g) ** 2 / (g * (2 - g)), T + (middle - T) / g)
            if watch:
                watch(T, middle, last, h, share)
            T = last
            now = self.heat(T, share)
        return T

    def one_period(self, T, watch=None):
        T = self.phase(T, self.on, 1.0, watch)
        rest = self.period - self.on
        if rest > 0.0:
            T = self.phase(T, rest, 0.0, watch)
        return T

    def settle(self, T, quick=False):
        """the start of a settled period. A period's change r is followed to its end by the slow modes of the mean
        state: next = T - (exp(AP) - 1)^-1 r with exp(z) by 1/(1 - z + z^2/2), A the slopes over the capacities."""
        share = self.on / self.period
        if share == 1.0:
            return T, 0.0, 0
        # what the slowest mode, an hour, would still add must be small as well as the change of one period
        allowed = 0.005 * min(1.0, self.period / 3600.0) * (10.0 if quick else 0.2)
        P = self.period
        slow = self.factored(T, share, 0.0, 1.0)
        half = self.factored(T, share, 1.0, 0.5 * P)
        for count in range(60):
            r = self.one_period(T) - T
            most = np.max(np.abs(r))
            if np.max(T + r) > 1500.0 or not np.isfinite(most):
                return None, most, count
            if most < allowed:
                return T + r, most, count
            T = T + r + self.solve(slow, self.C * r) / P - 0.5 * self.solve(half, self.C * r)
        raise RuntimeError("not settled: %s, %g K" % (self.id, most))

    # -- results

    def run(self, quick=False):
        start = self.mean_state()
        if start is None:
            return None
        T, change, count = self.settle(start, quick)
        if T is None:
            return None
        n = self.n
        total, on_total, peak = np.zeros(n), np.zeros(n), T.copy()
        faces = [f for l in self.leads for f in l["faces"]]
        fi, fj = np.array([f[0] for f in faces], dtype=int), np.array([f[2] for f in faces], dtype=int)
        fa, fb = np.array([f[1] for f in faces]), np.array([f[3] for f in faces])
        face_peak = np.full(len(faces), -1e9)
        drops = np.zeros(len(self.parts))
        worst = [0.0]

        def drops_at(T):
            ohms = self.cell_ohms(T)
            out = []
            for p in self.parts:
                lead = 0.0 if p["lead"] is None else self.amps * float(np.sum(ohms[self.leads[p["lead"]]["cells"]]))
                out.append(lead + p["drop"](T))
            for c, node, share in self.contacts:
                v = c.volts(self.amps, float(T[node]), share(T) if share else 1.0)
                soft = c.limits(float(T[node]))[0]
                worst[0] = max(worst[0], v / soft if soft > 0.0 else 9.0)
            return np.array(out)

        def watch(a, b, c, h, share):
            nonlocal total, on_total, peak, face_peak, drops
            mean = h * (self.W_FIRST * a + self.W_MIDDLE * b + self.W_LAST * c)
            total = total + mean
            for y in (a, b, c):
                peak = np.maximum(peak, y)
                if len(faces):
                    face_peak = np.maximum(face_peak, fa * y[fi] + fb * y[fj])
            if share == 1.0:
                on_total = on_total + mean
                drops = drops + h * (self.W_FIRST * drops_at(a) + self.W_MIDDLE * drops_at(b) +
                                     self.W_LAST * drops_at(c))

        self.start = T
        if self.on == self.period:
            watch(T, T, T, self.period, 1.0)
            end = T
        else:
            end = self.one_period(T, watch)
        self.residual = float(np.max(np.abs(end - T)))
        self.count = count
        self.worst_softening = worst[0]
        total, on_total, drops = total / self.period, on_total / self.on, drops / self.on
        self.hottest = float(np.max(peak)) - ZERO
        rows, at = [], 0
        for l in self.leads:
            l["face_peaks"] = face_peak[at:at + len(l["faces"])]
            at += len(l["faces"])
        for i, p in enumerate(self.parts):
            if p["kind"] == "arc":
                continue
            places = {}
            if p["lead"] is not None:
                l = self.leads[p["lead"]]
                c, w = l["conductors"], l["widths"] / l["lead"].length
                places["conductor"] = (float(np.sum(w * total[c])),
                                       float(max([np.max(peak[c])] + list(l["face_peaks"]))),
                                       float(np.sum(w * on_total[c])))
            for name, node in p["places"].items():
                places[name] = (float(total[node]), float(peak[node]), float(on_total[node]))
            # the place that stands for the part: of a lead its conductor; of others the hottest, the work's patch aside
            own = {k: v for k, v in places.items() if k != "patch"}
            stands = "conductor" if "conductor" in own else max(own, key=lambda k: own[k][1])
            rows.append((self.id, i, p["kind"], "part") + places[stands] + (float(drops[i]),))
            order = ["conductor", "head", "core", "body", "jaw", "spring", "handle", "entry", "patch", "first",
                     "second", "plate"]
            rows += [(self.id, i, p["kind"], k) + places[k] + (None,) for k in order if k in places]
        rows.append((self.id, len(self.parts), "loop", "total", None, None, None, float(np.sum(drops))))
        return rows


HERE = pathlib.Path(__file__).resolve().parent
COLUMNS = ("id", "part", "kind", "place", "mean_degC", "peak_degC", "on_degC", "drop_V")


def table(path):
    with open(path, newline="") as f:
        return list(csv.DictReader(line for line in f if not line.startswith("#")))


def text(row):
    degrees = ["" if x is None else "%.3f" % (x - ZERO) for x in row[4:7]]
    return ",".join([str(x) for x in row[:4]] + degrees + ["" if row[7] is None else "%.6f" % row[7]])


def some_stations(at):
    stations = table(HERE / "stations.csv")
    count, names = int(sys.argv[at + 1]), sys.argv[at + 2:]
    chosen = [s for s in stations if s["id"] in names] if names else stations[::max(1, len(stations) // count)]
    return chosen[:count]


def refine(stations):
    for s in stations:
        usual = Loop(s).run()
        coarse = vars(USUAL)
        cells, rings = ("first", "growth", "reach"), ("rings",)
        steps = ("step", "widen", "least_steps")
        for name, halved in (("all", cells + rings + steps), ("cells", cells), ("rings", rings), ("steps", steps)):
            finer = Loop(s, Grid(**{k: vars(FINE)[k] if k in halved else coarse[k] for k in coarse})).run()
            worst = max(((abs(a - b), x[1], x[2], x[3], c) for x, y in zip(usual, finer)
                         for c, a, b in zip(COLUMNS[4:7], x[4:7], y[4:7]) if a is not None))
            drop = max((abs(x[7] / y[7] - 1) for x, y in zip(usual, finer) if x[7] is not None))
            print(s["id"], name, "%.4f K" % worst[0], *worst[1:], "drop %.4f %%" % (100 * drop), flush=True)


def suite(stations):
    for s in stations:
        loop = Loop(s)
        loop.run()
        if loop.on == loop.period:
            continue
        mine = loop.phase(loop.start, loop.on, 1.0, None)
        ends, T = [mine, loop.phase(mine, loop.period - loop.on, 0.0, None)], loop.start
        for share, whole, end in ((1.0, loop.on, ends[0]), (0.0, loop.period - loop.on, ends[1])):
            found = solve_ivp(lambda t, y: loop.heat(y, share) / loop.C, (0.0, whole), T, method="LSODA", rtol=1e-8,
                              atol=1e-6, lband=loop.band, uband=loop.band, t_eval=[whole])
            T = found.y[:, -1]
            print(s["id"], "on" if share else "off", "differs by %.5f K" % np.max(np.abs(T - end)), flush=True)
        print(s["id"], "period closes within %.5f K" % np.max(np.abs(T - loop.start)), flush=True)


def main():
    if "--refine" in sys.argv:
        return refine(some_stations(sys.argv.index("--refine")))
    if "--suite" in sys.argv:
        return suite(some_stations(sys.argv.index("--suite")))
    kept = None
    if "--check" in sys.argv:
        kept = {tuple(r[c] for c in COLUMNS[:4]): r for r in table(sys.argv[sys.argv.index("--check") + 1])}
    else:
        print("# made by march.py: /usr/bin/python3 march.py > outputs.csv; Python %s, NumPy %s, SciPy %s (Debian 12, "
              "python3-scipy)" % (platform.python_version(), np.__version__, scipy.__version__))
        print(",".join(COLUMNS))
    bad = seen = 0
    for s in table(HERE / "stations.csv"):
        began = time.time()
        loop = Loop(s)
        rows = loop.run()
        if rows is None:
            raise RuntimeError("no settled state: " + s["id"])
        for row in rows:
            if kept is None:
                print(text(row), flush=True)
                continue
            seen += 1
            old = kept[tuple(str(x) for x in row[:4])]
            for x, c, allowed in zip(text(row).split(",")[4:], COLUMNS[4:], (0.02, 0.02, 0.02, 2e-5)):
                if (x == "") != (old[c] == "") or (x and abs(float(x) - float(old[c])) > allowed):
                    print("differs:", ",".join(str(v) for v in row[:4]), c, old[c], "now", x)
                    bad += 1
        print("%s: %d periods, change %.1e K, drop %.2f of softening, hottest %.0f degC, %.1f s" %
              (s["id"], loop.count, loop.residual, loop.worst_softening, loop.hottest, time.time() - began),
              file=sys.stderr, flush=True)
    if kept is not None:
        if seen != len(kept):
            print("%d rows kept, %d computed" % (len(kept), seen))
            bad += 1
        sys.exit(1 if bad else 0)


if __name__ == "__main__":
    main()
