#!/usr/bin/python3
"""A clamp's grip over hours of shift, all places of its heat network followed in time by an ODE suite; prints the kept
table.

Independent of the library: the laws are written again from their equations, and nothing is quasi-steady. Seven states:
five temperatures, the Larson-Miller parameter of the spring or the decades that a screw has settled, the square of the
film. LSODA of SciPy with tolerances of 1e-9, restarted at every switching of the current and of the shift. Every clamp
starts at the temperature of the air.

    /usr/bin/python3 march.py > outputs.csv
"""
import csv
import math
import platform

import numpy
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

LORENZ, SIGMA, GRAVITY = 2.44e-8, 5.670374419e-8, 9.80665
NODES = ("jaw", "body", "spring", "handle", "entry")
# resistivity, its coefficient, softening, melting
BRASS = (6.16e-8, 0.0017, 573.15, 1188.15)
STEEL = (1.43e-7, 0.0039, 773.15, 1753.15)
COPPER = (1.72414e-8, 0.00393, 463.15, 1357.15)
EXPONENT = 0.7  # of the force law
GAP = 1e-4  # m of air between the faces
SPOT = 5000.0  # nm, radius of the spots that film eats into
NORMAL, LOW, STRESS_SLOPE = (0.04966, 8.70e-4), (0.02448, 1.10e-3), 6.405
OUTPUTS = (0.02, 0.1, 0.3, 1.0)  # of the case's hours


def air(t):
    t15 = t * math.sqrt(t)

    def vibration(theta):
        x = theta / t
        return x * x * math.exp(-x) / (1 - math.exp(-x)) ** 2

    cp = 287.05 * (3.5 * (0.781 + 0.2095) + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6))
    density = 101325.0 / (287.05 * t)
    viscosity = 1.458e-6 * t15 / (t + 110.4)
    conductivity = 2.64638e-3 * t15 / (t + 245.4 * 10 ** (-12 / t))
    return density, viscosity, cp, conductivity


def loss(surface, diameter, emissivity, t, ambient):
    """W of a body in still air: Churchill and Chu for a cylinder, radiation; the coefficient of 1 K below 1 K."""
    if surface == 0.0:
        return 0.0
    rise = t - ambient
    shown = math.copysign(max(abs(rise), 1.0), rise)
    hot = ambient + shown
    film = ambient + 0.5 * shown
    density, viscosity, cp, k = air(film)
    nu, diffusivity = viscosity / density, k / (density * cp)
    rayleigh = GRAVITY / film * abs(shown) * diameter**3 / (nu * diffusivity)
    prandtl = nu / diffusivity
    nusselt = (0.60 + 0.387 * rayleigh ** (1 / 6) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
    h = nusselt * k / diameter + emissivity * SIGMA * (hot + ambient) * (hot**2 + ambient**2)
    return h * surface * rise


def rho(metal, t):
    return metal[0] * max(0.01, 1 + metal[1] * (t - 293.15))


def drop(amps, cold, metals, t):
    """V of a joint with conductance `cold` at 20 degC, its bodies at t."""
    t = min(t, min(m[3] for m in metals))
    now = sum(rho(m, t) for m in metals)
    g = cold * sum(m[0] for m in metals) / now
    reach = lambda spot: 2 * math.sqrt(LORENZ * max(0.0, spot**2 - t**2))
    soft, melt = min(reach(m[2]) for m in metals), min(reach(m[3]) for m in metals)
    c = 2 / 3 * sum(m[0] * m[1] for m in metals) / now * t
    scale = 2 * math.sqrt(LORENZ) * t
    hot = lambda v: 1 + c * (math.sqrt(1 + (v / scale) ** 2) - 1)
    x = amps / g
    if x * hot(soft) <= soft:
        return brentq(lambda v: v - x * hot(v), 0.0, soft, xtol=1e-15, rtol=1e-13)
    return brentq(lambda v: v * v * (melt - soft) - (x * hot(v)) ** 2 * (melt - v), soft, melt, xtol=1e-15, rtol=1e-13)


class Clamp:
    def __init__(self, row):
        number = lambda key: float(row[key])
        self.name, self.spring = row["name"], row["kind"] == "spring"
        self.amps, self.duty, self.period = number("amps"), number("duty"), number("period_s")
        self.hours, self.ambient = number("hours"), number("air_K")
        self.bodies = [tuple(number(f"{n}_{what}") for what in ("surface", "diameter", "emissivity", "capacity")) for n in NODES]
        ends = ((0, 1, "jaw_body"), (1, 2, "body_spring"), (1, 3, "body_handle"), (1, 4, "body_entry"), (0, 4, "jaw_entry"))
        self.links = [(i, j, number(key)) for i, j, key in ends]
        self.jaws, self.force, self.slope = number("jaws_S"), number("force_N"), number("grip_slope")
        self.termination, self.arms, self.path = number("termination_S"), number("arms_share"), number("spring_path")
        self.yields = number("spring_yields")
        self.sink, self.work, self.faces = number("work_sink"), number("work_K"), number("work_faces")
        self.lead, self.far = number("lead_G"), number("lead_far_K")
        self.shift, self.rest = number("shift_s"), number("rest_s")
        factor = math.exp(STRESS_SLOPE * (number("stress") - 0.7))
        self.reference = math.sqrt(NORMAL[0] * LOW[0]) * factor
        self.relaxing = 0.5 * (NORMAL[1] + LOW[1])

    def held(self, parameter, seconds):
        if self.spring:
            return math.exp(-self.reference * math.exp(self.relaxing * (parameter - 6742.45)))
        # a screw clamp: bedding in the first hour, then decades of settling; a frame leaves a fifth of a bolt's loss
        return 1 - 0.2 * (0.10 * min(1.0, seconds / 3600) + 0.02 * parameter)

    def force_now(self, y, seconds):
        return self.force * self.held(y[5], seconds) * (1 - self.slope * (y[2] - 293.15))

    def slopes(self, y, seconds, current):
        t = y[:5]
        flow = [-loss(*body[:3], ti, self.ambient) for body, ti in zip(self.bodies, t)]
        for i, j, g in self.links:
            flow[i] -= g * (t[i] - t[j])
            flow[j] += g * (t[i] - t[j])
        # the lead and the heat that crosses into the work are held at what they are in the mean over the period
        flow[4] -= self.lead * (t[4] - self.far)
        cold = self.jaws * (self.force_now(y, seconds) / self.force) ** EXPONENT * (1 - math.sqrt(max(0.0, y[6])) / SPOT)
        volts = drop(self.amps, cold, (BRASS, STEEL), t[0])
        crossing = LORENZ * t[0] * self.amps / volts + air(t[0])[3] * self.faces / GAP
        flow[0] -= crossing * self.sink / (crossing + self.sink) * (t[0] - self.work)
        if current:
            flow[0] += self.amps * volts * (1 - 0.5 * self.sink / (crossing + self.sink))
            end = self.amps * drop(self.amps, self.termination, (COPPER, BRASS), t[4])
            flow[1] += self.arms * end
            flow[4] += (1 - self.arms) * end
            grown = rho(STEEL, t[2]) / STEEL[0]
            flow[2] += self.amps**2 * self.path * grown / (1.0 + self.yields * (grown - 1.0)) ** 2
        rates = [f / body[3] for f, body in zip(flow, self.bodies)]
        if self.spring:
            relaxing = t[2] / (math.log(10) * 3600) * 10 ** (20 - y[5] / t[2])
        else:
            pace = (BRASS[2] - 293.15) / (BRASS[2] - t[0])
            relaxing = pace / (math.log(10) * 3600) * 10 ** (-y[5] / pace)
        nm = math.sqrt(max(0.0, y[6]))
        parabolic = 0.225 * math.exp(-0.82 / 8.617e-5 * (1 / min(t[0], 453.15) - 1 / 373.15))
        age = 10 ** ((nm - 2.2) / 0.9 + 3)
        film = max(parabolic, 2 * nm * 0.9 / math.log(10) / age)
        return rates + [relaxing, film / 3600]

    def segments(self):
        """On and off, one after the other: length in s, whether current flows, whether it is time of shift."""
        total = self.hours * 3600
        stops = [share * total for share in OUTPUTS]
        done = 0.0
        while done < total - 1e-6:
            # stops lie on whole periods and on ends of shifts
            if self.rest > 0.0:
                yield self.shift, True, True
                done += self.shift
                yield 0.0, None, done
                yield self.rest, False, False
            elif self.duty < 1.0:
                yield self.duty * self.period, True, True
                yield (1 - self.duty) * self.period, False, True
                done += self.period
                yield 0.0, None, done
            else:
                step = min(s for s in stops if s > done + 1e-6) - done
                yield step, True, True
                done += step
                yield 0.0, None, done

    def march(self):
        # a first second at the temperature of the air: from new the rate of relaxation has no bound
        start = 1.0
        relaxed = self.ambient * (20 + math.log10(start / 3600)) if self.spring else 0.0
        y = numpy.array([self.ambient] * 5 + [relaxed, 0.0])
        seconds, jaw_peak = start, self.ambient
        total = self.hours * 3600
        left = [share * total for share in OUTPUTS]
        first = True
        for length, current, mark in self.segments():
            if current is None:
                if left and mark >= left[0] - 1e-3:
                    left.pop(0)
                    yield mark / 3600, y.copy(), mean / weight, jaw_peak, seconds
                mean, weight = numpy.zeros(5), 0.0
                continue
            if first:
                length -= start
                mean, weight, first = numpy.zeros(5), 0.0, False
            begun = seconds
            found = solve_ivp(lambda t, s: self.slopes(s, begun + t, current), (0, length), y, method="LSODA", rtol=1e-9,
                              atol=[1e-7] * 5 + [1e-7, 1e-7], dense_output=self.duty < 1.0)
            assert found.success, found.message
            y = found.y[:, -1]
            if self.duty < 1.0:
                points, weights = numpy.polynomial.legendre.leggauss(8)
                parts = length * numpy.array([0.0, 0.02, 0.06, 0.15, 0.4, 1.0])  # the jaws hurry after a switching
                for a, b in zip(parts[:-1], parts[1:]):
                    mean = mean + found.sol(a + 0.5 * (b - a) * (points + 1))[:5] @ weights * 0.5 * (b - a)
                weight += length
                if current:
                    jaw_peak = y[0]
            else:
                mean, weight, jaw_peak = y[:5] * 1.0, 1.0, y[0]
            if mark:
                seconds += length


print(f"# made by march.py: /usr/bin/python3 march.py > outputs.csv; Python {platform.python_version()}, NumPy "
      f"{numpy.__version__}, SciPy {scipy.__version__} (Debian 12, python3-scipy)")
print("name,hours,force_N,jaw_peak_degC,jaw_degC,body_degC,spring_degC,handle_degC,entry_degC,film_nm")
with open("cases.csv", encoding="ascii") as deck:
    rows = csv.DictReader(line for line in deck if not line.startswith("#"))
    for row in rows:
        clamp = Clamp(row)
        for hours, y, mean, peak, seconds in clamp.march():
            shown = numpy.append(mean, y[5:])
            print(f"{clamp.name},{hours:.6g},{clamp.force_now(shown, seconds):.5f},{peak - 273.15:.4f},"
                  + ",".join(f"{t - 273.15:.4f}" for t in mean) + f",{math.sqrt(max(0.0, y[6])):.5f}", flush=True)
