#!/usr/bin/python3
"""Rated current of the hottest turn of a coil, by finite elements of its section (gmsh, getdp).

    /usr/bin/python3 run.py > outputs.csv
    /usr/bin/python3 run.py --check outputs.csv    # solves again, every current within 0.2 %

Each turn is a copper core in rubber, drawn one by one: the places of a hexagonal pattern nearest to the middle, a twelfth
(`loose`) or a fiftieth (`tied`) of a diameter between neighbours, nothing touching, within a string drawn tight around
them. The gaps conduct like still air and pass radiation, as conduction over their mean width (void area over the turns'
rims, 6 W/(m2 K)). Heat leaves by the string, whose convection is that of a cylinder of its length. The current is moved until the hottest point of copper is at 85 degC in air of 25 degC.
"""
import math
import os
import shutil
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
SIZES = {16: (5.9, 10.15, 1.21), 70: (12.45, 17.25, 0.272), 185: (19.6, 26.0, 0.106)}  # mm, mm, ohm/km at 20 degC
CASES = ([(70, n, wind, pitch) for n in (3, 7, 12, 19, 30) for wind in (0, 1, 5, 10) for pitch in ("loose", "tied")]
         + [(size, n, wind, "loose") for size in (16, 185) for n in (7, 19) for wind in (0, 5)])
PITCH = {"loose": 1.0 + 1.0 / 12.0, "tied": 1.02}  # of neighbours' middles over their diameter
AIR, LIMIT = 25.0, 85.0
ROUNDING, OUTER = 0.15, 0.2  # outer turns are moved out a little, so that no three of them are in line
AIR_CONDUCTION, ACROSS = 0.028, 6.0  # W/(m K) at 50 degC; W/(m2 K) of grey surfaces of 0.9 at 60 degC


def places(n, pitch):
    """of n turns in units of their diameter, about their middle"""
    corner = (0.5, math.sqrt(3.0) / 6.0)  # three turns about a gap, twelve about three
    middle = corner if n in (3, 12) else (0.0, 0.0)
    grid = [(i + 0.5 * j - middle[0], math.sqrt(0.75) * j - middle[1]) for i in range(-9, 10) for j in range(-9, 10)]
    grid.sort(key=lambda p: (round(math.hypot(*p), 9), math.atan2(p[1], p[0])))
    kept = grid[:n]
    most = math.hypot(*kept[-1])
    outer = 0.25 if n == 12 else OUTER
    out = []
    for x, y in kept:
        inward = 1.0 - math.hypot(x, y) / most
        f = PITCH[pitch] * (1.0 + (ROUNDING * inward if inward < outer else 0.0))
        out.append((f * x, f * y))
    return out


def hull(points):
    """indices of the outer points, anticlockwise"""
    order = sorted(range(len(points)), key=lambda i: points[i])

    def chain(way):
        out = []
        for i in way:
            while len(out) > 1:
                (ax, ay), (bx, by), (cx, cy) = points[out[-2]], points[out[-1]], points[i]
                if (bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 1e-9:
                    break
                out.pop()
            out.append(i)
        return out[:-1]

    return chain(order) + chain(order[::-1])


class Section:
    """Text of the geometry: turns as core and rubber, the skin of the outer turns and the tangents between as outline."""

    def __init__(self, turns, core, lead):
        self.text = [f"c = {core / 16:.6g}; a = {lead / 20:.6g};"]
        self.points = self.curves = self.surfaces = 0
        outer = hull(turns)
        around = {outer[k]: (outer[k - 1], outer[(k + 1) % len(outer)]) for k in range(len(outer))}

        def away(i, j):  # the angle at which the tangent from turn i to turn j leaves, the hull being to its left
            return math.atan2(turns[j][1] - turns[i][1], turns[j][0] - turns[i][0]) - 0.5 * math.pi

        cores, rubber, free, rim, skin = [], [], [], [], {}
        self.perimeter = 0.0
        for i, (x, y) in enumerate(turns):
            inner = self.loop(self.circle(x, y, core / 2, "c", [k * math.pi / 2 for k in range(4)])[0])
            cores.append(self.surface([inner]))
            if i in around:
                begin, end = away(around[i][0], i), away(i, around[i][1])
                while end < begin:
                    end += 2.0 * math.pi
                rest = begin + 2.0 * math.pi - end
                angles = [begin, end] + [end + rest * k / 4 for k in (1, 2, 3)]
                arcs, corners = self.circle(x, y, lead / 2, "a", angles)
                skin[i] = (corners[0], corners[1], arcs[1:])
                rim.append(arcs[0])
                self.perimeter += (end - begin) * lead / 2
            else:
                arcs, _ = self.circle(x, y, lead / 2, "a", [k * math.pi / 2 for k in range(4)])
                free.append(self.loop(arcs))
            rubber.append(self.surface([self.loop(arcs), inner]))
        edge = []
        for i in outer:
            following = around[i][1]
            tangent = self.line(skin[i][1], skin[following][0])
            rim.append(tangent)
            self.perimeter += math.dist(turns[i], turns[following])
            edge += [tangent] + [-arc for arc in reversed(skin[following][2])]
        between = self.surface([self.loop(edge)] + free)
        for kind, number, members in (("Surface", 11, cores), ("Surface", 12, rubber), ("Surface", 13, [between]),
                                      ("Curve", 21, rim)):
            self.text.append(f"Physical {kind}({number}) = {{{', '.join(map(str, members))}}};")
        self.hull_area = 0.5 * sum(turns[outer[k - 1]][0] * turns[outer[k]][1] - turns[outer[k]][0] * turns[outer[k - 1]][1]
                                   for k in range(len(outer)))
        self.hull_area += 0.5 * lead * sum(math.dist(turns[outer[k - 1]], turns[outer[k]]) for k in range(len(outer)))
        self.hull_area += 0.25 * math.pi * lead**2

    def point(self, x, y, size):
        self.points += 1
        self.text.append(f"Point({self.points}) = {{{x:.9g}, {y:.9g}, 0, {size}}};")
        return self.points

    def line(self, begin, end):
        self.curves += 1
        self.text.append(f"Line({self.curves}) = {{{begin}, {end}}};")
        return self.curves

    def circle(self, x, y, radius, size, angles):
        middle = self.point(x, y, size)
        corners = [self.point(x + radius * math.cos(t), y + radius * math.sin(t), size) for t in angles]
        arcs = []
        for k, begin in enumerate(corners):
            self.curves += 1
            arcs.append(self.curves)
            self.text.append(f"Circle({self.curves}) = {{{begin}, {middle}, {corners[(k + 1) % len(corners)]}}};")
        return arcs, corners

    def loop(self, curves):
        self.surfaces += 1
        self.text.append(f"Curve Loop({self.surfaces}) = {{{', '.join(map(str, curves))}}};")
        return self.surfaces

    def surface(self, loops):
        self.surfaces += 1
        self.text.append(f"Plane Surface({self.surfaces}) = {{{', '.join(map(str, loops))}}};")
        return self.surfaces


def quiet(command):
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
    if done.returncode != 0:
        raise RuntimeError(" ".join(command) + "\n" + done.stdout)


def solve(size, n, wind, pitch):
    core, lead, ohm = SIZES[size]
    section = Section([(1e-3 * lead * x, 1e-3 * lead * y) for x, y in places(n, pitch)], 1e-3 * core, 1e-3 * lead)
    outline = section.perimeter / math.pi  # a cylinder of as much surface
    void = section.hull_area - n * 0.25 * math.pi * (1e-3 * lead) ** 2
    width = void / (n * math.pi * 1e-3 * lead)
    gap = AIR_CONDUCTION + ACROSS * width
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        shutil.copy(os.path.join(HERE, "heat.pro"), folder)  # getdp writes beside its deck
        with open("s.geo", "w", encoding="ascii") as out:
            out.write("\n".join(section.text) + "\n")
        quiet(["gmsh", "-2", "-format", "msh22", "-v", "1", "s.geo", "-o", "m.msh"])
        amps = 200.0 * math.sqrt(size / 70.0)
        for _ in range(12):
            numbers = {"Amps": amps, "Ohm20": ohm * 1e-3, "Wind": wind, "Air": AIR, "Outline": outline,
                       "Core": core * 1e-3, "Gap": gap}
            settings = [word for name, value in numbers.items() for word in ("-setnumber", name, f"{value:.9g}")]
            quiet(["getdp", "heat.pro", "-msh", "m.msh", "-name", "r", "-solve", "R", "-pos", "out",
                   "-v", "1"] + settings)
            with open("copper.txt", encoding="ascii") as table:
                hottest = max(float(line.split()[-1]) for line in table if line.strip())
            if abs(hottest - LIMIT) < 0.02:
                break
            amps *= ((LIMIT - AIR) / (hottest - AIR)) ** 0.5
        else:
            raise RuntimeError(f"not settled: {hottest} degC")
        with open("rim.txt", encoding="ascii") as table:
            rim = float(table.read().split()[-1])
        with open("lost.txt", encoding="ascii") as table:
            lost = float(table.read().split()[-1])
    return f"{size},{n},{wind},{pitch},{n * 0.25e-6 * math.pi * lead**2 / section.hull_area:.4f},{gap:.4f},{rim:.2f},{lost / n:.4f},{amps:.2f}"


if len(sys.argv) == 3 and sys.argv[1] == "--check":
    with open(sys.argv[2], encoding="ascii") as kept:
        rows = [line.strip().split(",") for line in kept if not line.startswith("#")][1:]
    if len(rows) != len(CASES):
        sys.exit(f"{len(rows)} kept outputs of {len(CASES)}")
    bad = 0
    for case, row in zip(CASES, rows):
        now = float(solve(*case).split(",")[-1])
        if abs(now / float(row[-1]) - 1.0) > 0.002:
            print(",".join(row), "now", now)
            bad += 1
    print(len(rows) - bad, "cases agree")
    sys.exit(bad > 0)
print("# made by run.py with gmsh 4.8.4 and getdp 3.2.0 (Debian 12)")
print("size_mm2,turns,wind_m_per_s,pitch,packing,gap_conductivity,outline_degC,watt_per_m,current_A")
for case in CASES:
    print(solve(*case), flush=True)
