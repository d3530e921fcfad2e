"""What the library marches or iterates, followed here by rules of its own: rows.py asks.

A covered conductor in time is marched by Radau's collocation of six stages (order 11, Hairer and Wanner, Solving Ordinary
Differential Equations II, IV.5) in steps that grow with the distance from the switching; a period is closed by Newton's
rule on its start. Arithmetic has fifty digits; with steps half as long temperatures move by less than 1e-9 of the rise,
highest ones of a surface by 1e-8.
"""


from mpmath import mp, mpf, pi, polyroots

mp.dps = 50
E = mp.e
STAGES = 6


def padded(p, q):  # sum of two polynomials, the highest power first
    n = max(len(p), len(q))
    return [a + b for a, b in zip([mpf(0)] * (n - len(p)) + p, [mpf(0)] * (n - len(q)) + q)]


def times(p, q):
    out = [mpf(0)] * (len(p) + len(q) - 1)
    for i, a in enumerate(p):
        for k, b in enumerate(q):
            out[i + k] += a * b
    return out


def derivative(p):
    return [a * (len(p) - 1 - i) for i, a in enumerate(p[:-1])]


def integral(p):
    return [a / (len(p) - i) for i, a in enumerate(p)] + [mpf(0)]


def value(p, x):
    out = mpf(0)
    for a in p:
        out = out * x + a
    return out


def lagrange(places, i):
    out = [mpf(1)]
    for k, x in enumerate(places):
        if k != i:
            out = times(out, [1 / (places[i] - x), -x / (places[i] - x)])
    return out


def radau():  # zeros of the (s - 1)th derivative of x^(s - 1) (x - 1)^s, 1 among them
    p = [mpf(1)] + [mpf(0)] * (STAGES - 1)
    for _ in range(STAGES):
        p = times(p, [mpf(1), mpf(-1)])
    for _ in range(STAGES - 1):
        p = derivative(p)
    places = sorted((z.real for z in polyroots(p, maxsteps=200, extraprec=200)))
    shapes = [lagrange(places, i) for i in range(STAGES)]
    return places, shapes, [[value(integral(l), c) for l in shapes] for c in places]


PLACES, SHAPES, RADAU = radau()
WHOLE = [integral(l) for l in SHAPES]

# Gauss-Lobatto places of 0 to 1 and the slopes' products over it
LOBATTO = [mpf(0), (1 - (mpf(3) / 7) ** mpf(0.5)) / 2, mpf(1) / 2, (1 + (mpf(3) / 7) ** mpf(0.5)) / 2, mpf(1)]
WEIGHT = [mpf(1) / 20, mpf(49) / 180, mpf(16) / 45, mpf(49) / 180, mpf(1) / 20]
SLOPES = [derivative(lagrange(LOBATTO, i)) for i in range(5)]
STIFF = [[value(integral(times(a, b)), mpf(1)) for b in SLOPES] for a in SLOPES]


def loss_law(d, air, num):
    """Heat of a horizontal cylinder in still air at sea level, Churchill and Chu 1975, emissivity 0.9, over the rise."""
    c = [num(mpf(v)) for v in (1.458e-6, 110.4, 2.64638e-3, 245.4, 287.05, 0.781, 0.2095, 3.5, 2.5, 0.0093, 3393.5, 2273.6,
                               9.80665, 0.559, 0.60, 0.387, 0.9, 5.670374419e-8, 101325.0)]
    (mu0, mu1, k0, k1, gas, n2, o2, high, low, argon, t_n2, t_o2, g, by_pr, still, moves, grey, sigma, sea) = c
    e, p = num(E), num(pi)
    power = [num(mpf(a) / b) for a, b in ((9, 16), (8, 27), (1, 6), (3, 2))]
    d, air = num(d), num(air)

    def oscillator(x):
        grown = e**x
        return x * x * grown / (grown - 1) ** 2

    def loss(rise):
        surface = air + rise
        t = (surface + air) / 2
        rho, mu = sea / (gas * t), mu0 * t ** power[3] / (t + mu1)
        k = k0 * t ** power[3] / (t + k1 * 10 ** (-12 / t))
        heat = gas * (high * (n2 + o2) + low * argon + n2 * oscillator(t_n2 / t) + o2 * oscillator(t_o2 / t))
        nu, alpha = mu / rho, k / (rho * heat)
        ra = g / t * abs(rise) * d**3 / (nu * alpha)
        nusselt = (still + moves * ra ** power[2] / (1 + (by_pr * alpha / nu) ** power[0]) ** power[1]) ** 2
        return p * k * nusselt * rise + p * d * grey * sigma * (surface**4 - air**4)

    return loss


def eliminated(m):
    n, order = len(m), list(range(len(m)))
    for k in range(n):
        best = max(range(k, n), key=lambda r: abs(m[r][k]))
        m[k], m[best], order[k], order[best] = m[best], m[k], order[best], order[k]
        for r in range(k + 1, n):
            f = m[r][k] = m[r][k] / m[k][k]
            if f:
                row, top = m[r], m[k]
                for c in range(k + 1, n):
                    row[c] -= f * top[c]
    return m, order


def solved(lu, right):
    m, order = lu
    n = len(m)
    x = [right[i] for i in order]
    for r in range(n):
        for c in range(r):
            x[r] -= m[r][c] * x[c]
    for r in reversed(range(n)):
        for c in range(r + 1, n):
            x[r] -= m[r][c] * x[c]
        x[r] /= m[r][r]
    return x


class Conductor:
    """C x' = -G K x + heat in the conductor - q(x4) at the surface; rises over the air at five places of the covering.

    @param how resistance at 20 degC, its coefficient, heat of metal and covering, conductance and ratio of the covering,
    outer diameter, air: ohm/m, 1/K, J/(m K), W/(m K), 1, m, K
    """

    def __init__(self, how, num=mpf):
        resistance, alpha, metal, covering, conductance, ratio, diameter, air = map(mpf, how)
        share = [w * mp.exp(2 * mp.log(ratio) * u) for w, u in zip(WEIGHT, LOBATTO)]
        self.how, self.num = tuple(how), num
        self.heat = [num((metal if i == 0 else 0) + covering * s / sum(share)) for i, s in enumerate(share)]
        self.flow = [[num(conductance * STIFF[i][k]) for k in range(5)] for i in range(5)]
        self.loss = loss_law(diameter, air, num)
        self.resistance, self.alpha, self.above = num(resistance), num(alpha), num(air - mpf(293.15))
        self.rough = self if num is float else Conductor(how, float)

    def speed(self, x, amps):
        watts = [-sum(a * b for a, b in zip(self.flow[i], x)) for i in range(5)]
        watts[0] += amps * amps * self.resistance * (1 + self.alpha * (self.above + x[0]))
        watts[4] -= self.loss(x[4])
        return [w / c for w, c in zip(watts, self.heat)]

    def slopes(self, x, amps):
        """Of speed() by x, in floats: what Newton's rule needs of it."""
        c, at = self.rough, float(x[4])
        out = [[-c.flow[i][k] / c.heat[i] for k in range(5)] for i in range(5)]
        out[0][0] += float(amps) ** 2 * c.resistance * c.alpha / c.heat[0]
        out[4][4] -= (c.loss(at + 0.05) - c.loss(at - 0.05)) / 0.1 / c.heat[4]
        return out

    def step(self, x, amps, h):
        """One step: the values at its stages, the last of them its end."""
        num, n = self.num, 5 * STAGES
        slopes, a = self.slopes(x, amps), [[float(v) for v in row] for row in RADAU]
        lu = eliminated([[(r == c) - float(h) * a[r // 5][c // 5] * slopes[r % 5][c % 5] for c in range(n)]
                         for r in range(n)])
        rule = [[num(v) for v in row] for row in RADAU]
        stage = [list(x) for _ in range(STAGES)]
        for _ in range(60):
            speed = [self.speed(s, amps) for s in stage]
            off = [x[i] + h * sum(rule[s][k] * speed[k][i] for k in range(STAGES)) - stage[s][i]
                   for s in range(STAGES) for i in range(5)]
            most = max(map(abs, off))
            for r, d in enumerate(solved(lu, [float(v) for v in off])):
                stage[r // 5][r % 5] += num(d)
            if most < (1e-11 if num is float else mpf(10) ** -24):
                return stage
        raise ArithmeticError("a step did not settle")

    def slow_time(self):
        c = self.rough
        return sum(c.heat) * (1 / float(self.how[4]) + 1 / (c.loss(20.5) - c.loss(19.5)))

    def march(self, x, amps, whole, finer=1):
        """From a switching to `whole` seconds after it: list of (begin, length, values before, stages)."""
        num = self.num
        growth, first, longest = 1 + 0.6 / finer, 1e-3 / finer, 0.25 / finer
        amps, at, h, out = num(amps), num(0), num(mpf(first * self.slow_time())), []
        while at < whole:
            last = at + h * mpf("1.3") >= whole if num is mpf else at + 1.3 * h >= whole
            length = whole - at if last else h
            stage = self.step(x, amps, length)
            out.append((at, length, x, stage))
            x = stage[-1]
            if last:
                return out
            at += length
            h = min(h * num(mpf(growth)), num(mpf(longest * self.slow_time())))
        return out

    def period(self, x, amps, on, rest, finer=1):
        burning = self.march(x, amps, on, finer)
        return burning, self.march(burning[-1][3][-1], 0, rest, finer)

    def settled(self, amps, on, rest, finer=1):
        """The period that ends as it begins."""
        rough = self.rough
        x = [self.num(mpf(20))] * 5
        if self.num is not float:
            x = [self.num(mpf(v)) for v in rough.settled(float(amps), float(on), float(rest), finer)[0][0][2]]
        begin = [float(v) for v in x]
        end_of = lambda at: rough.period(at, float(amps), float(on), float(rest), finer)[1][-1][3][-1]
        for _ in range(30):
            if self.num is float or _ == 0:
                begin = [float(v) for v in x]
                base, columns = end_of(begin), []
                for k in range(5):
                    moved = list(begin)
                    moved[k] += 1e-3
                    columns.append([(a - b) / 1e-3 for a, b in zip(end_of(moved), base)])
                lu = eliminated([[(r == c) - columns[c][r] for c in range(5)] for r in range(5)])
            found = self.period(x, amps, on, rest, finer)
            off = [a - b for a, b in zip(found[1][-1][3][-1], x)]
            if max(map(abs, off)) < (1e-9 if self.num is float else mpf(10) ** -18):
                return found
            x = [a + self.num(d) for a, d in zip(x, solved(lu, [float(v) for v in off]))]
        raise ArithmeticError("a period did not settle")


def mean(parts, place):
    """Over the marches of a whole period."""
    whole = sum(p[-1][0] + p[-1][1] for p in parts)
    weights = RADAU[-1]
    return sum(h * sum(w * s[place] for w, s in zip(weights, stage)) for p in parts for _, h, _, stage in p) / whole


def path(step, place):
    """The collocation polynomial of a step at a share of it: through its begin and its stages."""
    _, _, x, stage = step
    places = [mpf(0)] + PLACES
    values = [x[place]] + [s[place] for s in stage]
    return lambda u: sum(v * value(lagrange(places, i), u) for i, v in enumerate(values))


def highest(parts, place):
    """Of all steps, within them where a step rises and falls."""
    best = mpf(0)
    for p in parts:
        for step in p:
            inside = [s[place] for s in step[3]]
            best = max([best, step[2][place]] + inside)
            if max(inside[:-1]) > max(step[2][place], inside[-1]):
                f, low, high = path(step, place), mpf(0), mpf(1)
                for _ in range(120):
                    a, b = low + (high - low) / 3, high - (high - low) / 3
                    low, high = (a, high) if f(a) < f(b) else (low, b)
                best = max(best, f(low))
    return best


def passage(steps, wanted):
    """When the conductor is at a rise, after the switching."""
    for step in steps:
        begin, h, x, stage = step
        if (x[0] < wanted) != (stage[-1][0] < wanted):
            f, low, high = path(step, 0), mpf(0), mpf(1)
            for _ in range(100):
                middle = (low + high) / 2
                low, high = (middle, high) if (f(middle) < wanted) == (x[0] < wanted) else (low, middle)
            return begin + low * h, h
    return None
