#!/usr/bin/python3
"""One metre of lead as a copper core and a covering of many rings, marched by an ODE suite; prints the kept table.

Independent of the library: finite volumes in the radius, 200 rings, LSODA of SciPy with tolerances of 1e-9, restarted at
every switching; settled programmes start from the steady state of their mean squared current. The core is one node (copper conducts 2000 times as well as rubber); heat of the current grows with its
temperature. The surface gives off heat by the law the library takes for a lone lead in still air: IEC 60287-2-1, or
Churchill and Chu where that leaves more to convection, radiation of the air around; air by the U.S. Standard Atmosphere.

    /usr/bin/python3 radial.py > outputs.csv
"""
import math
import platform

import numpy
import scipy
from scipy.integrate import solve_ivp

AIR = 298.15
SIZES = {16: (5.9, 10.15, 1.21), 70: (12.45, 17.25, 0.272), 185: (19.6, 26.0, 0.106)}  # mm, mm, ohm/km at 20 degC
ALPHA, COPPER, RUBBER, CONDUCTIVITY = 0.00393, 8890.0 * 386.0, 2.0e6, 0.2
RATED = {16: 136.0, 70: 355.0, 185: 665.0}  # A, near the continuous ratings
PROGRAMMES = {  # multiples of the rated current and s, one after the other from a lead at the air's temperature
    "long": [(1.0, 3600.0)],
    "minute": [(2.0, 60.0)],
    "burst": [(4.0, 10.0)],
    "shot": [(1.4, 600.0)],
    "half hour": [(1.2, 1800.0)],
    "cooling": [(1.0, 36000.0), (0.0, 900.0)],
}
SETTLED = {  # multiples of the rated current, s of on-time, s of period; repeated until nothing changes
    "6 of 10 min": (1.25, 360.0, 600.0),
    "3 of 5 min": (1.25, 180.0, 300.0),
    "2 of 10 min": (1.9, 120.0, 600.0),
    "1 of 10 min": (2.5, 60.0, 600.0),
    "10 s of 5 min": (4.0, 10.0, 300.0),
    "2 s of 1 min": (4.5, 2.0, 60.0),
}
PERIODS_TIME = 30000.0  # s: 12 time constants of the slowest lead
RINGS = 200


def given_off(diameter, surface):
    rise = surface - AIR
    if rise == 0.0:
        return 0.0
    t = 0.5 * (surface + AIR)
    density = 101325.0 / (287.05 * t)
    viscosity = 1.458e-6 * t**1.5 / (t + 110.4)
    conductivity = 2.64638e-3 * t**1.5 / (t + 245.4 * 10.0 ** (-12.0 / t))

    def vibration(theta):
        x = theta / t
        return x * x * math.exp(-x) / (1.0 - math.exp(-x)) ** 2

    heat = 287.05 * (3.5 * 0.9905 + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6))
    nu, diffusivity = viscosity / density, conductivity / (density * heat)
    prandtl = nu / diffusivity
    rayleigh = 9.80665 / t * abs(rise) * diameter**3 / (nu * diffusivity)
    nusselt = (0.60 + 0.387 * rayleigh ** (1 / 6) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2
    def radiation(air):
        return math.pi * diameter * 0.9 * 5.670374419e-8 * ((air + rise) ** 4 - air**4)

    first = math.pi * nusselt * conductivity * rise
    standard = math.pi * diameter * (0.21 / diameter**0.60 + 3.94) * rise * abs(rise) ** 0.25 - radiation(303.15)
    return (max(first, standard) if rise > 0 else min(first, standard)) + radiation(AIR)


class Lead:
    def __init__(self, size):
        inner, outer, ohm = SIZES[size]
        edge = numpy.linspace(0.5e-3 * inner, 0.5e-3 * outer, RINGS + 1)
        middle = 0.5 * (edge[1:] + edge[:-1])
        self.ohm = ohm * 1e-3
        self.capacity = numpy.concatenate(([COPPER * size * 1e-6],
                                           RUBBER * math.pi * (edge[1:] ** 2 - edge[:-1] ** 2)))
        self.between = 2 * math.pi * CONDUCTIVITY / numpy.log(middle / numpy.concatenate(([edge[0]], middle[:-1])))
        self.last = 2 * math.pi * CONDUCTIVITY / math.log(edge[-1] / middle[-1])
        self.diameter = outer * 1e-3

    def surface_of(self, ring):  # the massless surface: what the last half ring brings is given off
        s = ring
        for _ in range(30):
            step = 1e-3
            f = given_off(self.diameter, s) - self.last * (ring - s)
            slope = (given_off(self.diameter, s + step) - given_off(self.diameter, s - step)) / (2 * step) + self.last
            s -= f / slope
            if abs(f / slope) < 1e-11:
                break
        return s

    def after(self, state, amps, time):
        def speed(_, x):
            flow = self.between * (x[:-1] - x[1:])
            heat = numpy.zeros(RINGS + 1)
            heat[0] = amps * amps * self.ohm * (1 + ALPHA * (x[0] - 293.15))
            heat[:-1] -= flow
            heat[1:] += flow
            heat[-1] -= self.last * (x[-1] - self.surface_of(x[-1]))
            return heat / self.capacity

        done = solve_ivp(speed, (0.0, time), state, method="LSODA", rtol=1e-9, atol=1e-9, lband=1, uband=1)
        if not done.success:
            raise RuntimeError(done.message)
        return done.y[:, -1]


def row(size, name, kind, parts, lead, state, state_low):
    both = parts + [(0.0, 0.0)] * (2 - len(parts))
    cells = [f"{share * RATED[size]:.6g},{time:g}" for share, time in both]
    print(f"{size},{name},{kind},{','.join(cells)},{state[0] - 273.15:.4f},{lead.surface_of(state[-1]) - 273.15:.4f},"
          f"{state_low[0] - 273.15:.4f}", flush=True)


print(f"# made by radial.py: /usr/bin/python3 radial.py > outputs.csv; Python {platform.python_version()}, "
      f"NumPy {numpy.__version__}, SciPy {scipy.__version__} (Debian 12, python3-scipy); {RINGS} rings")
print("size_mm2,programme,kind,amps_1,seconds_1,amps_2,seconds_2,conductor_degC,surface_degC,conductor_lowest_degC")
for size in SIZES:
    lead = Lead(size)
    for name, programme in PROGRAMMES.items():
        state = numpy.full(RINGS + 1, AIR)
        for share, time in programme:
            state = lead.after(state, share * RATED[size], time)
        row(size, name, "once", programme, lead, state, state)
    for name, (share, on, period) in SETTLED.items():
        state = lead.after(numpy.full(RINGS + 1, AIR), share * RATED[size] * math.sqrt(on / period), PERIODS_TIME)
        peak = state
        for _ in range(round(PERIODS_TIME / 2 / period)):
            peak = lead.after(state, share * RATED[size], on)
            state = lead.after(peak, 0.0, period - on)
        row(size, name, "settled", [(share, on), (0.0, period - on)], lead, peak, state)
