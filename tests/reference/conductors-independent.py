#!/usr/bin/env python3
"""Numbers against which the library's own functions are checked, by arbitrary-precision arithmetic (python3-mpmath).

    python3 conductors-independent.py skin > conductors-skin-effect-independent.csv
    python3 conductors-independent.py coil > conductors-coil-independent.csv
"""
import sys

from mpmath import besseli, cos, fmul, ln, mp, mpc, mpf, nstr, pi, quad, sqrt

mp.dps = 40


def skin():
    print("# python3 conductors-independent.py skin (mpmath, 40 digits): (z/2) I0(z)/I1(z), z = (1+j) a/delta")
    print("radius_over_skin_depth,resistance_increase,inductance_ratio")
    for text in ("1e-4 0.01 0.1 0.3 0.7 1 1.3 2 2.7 3.6 5 7 10 13 16 19 22 22.5 22.7 24 30 45 100 1000 100000").split():
        a = mpf(text)
        z = mpc(a, a)
        quotient = z / 2 * besseli(0, z) / besseli(1, z) - 1
        print(text, nstr(quotient.real, 17), nstr(4 * quotient.imag / a**2, 17), sep=",")


def mutual(one, other, apart):
    """Neumann's double integral over two coaxial circles, one angle done by symmetry [H]; lengths in m."""
    def integrand(angle):
        return cos(angle) / sqrt(one**2 + other**2 + apart**2 - 2 * one * other * cos(angle))
    return mpf("4e-7") * pi * one * other * quad(integrand, [0, pi / 16, pi / 4, pi])


def coil():
    print("# python3 conductors-independent.py coil (mpmath, 40 digits): Neumann's integral over coaxial circles by")
    print("# quadrature; a turn alone by mu0 R (ln(8 R/a) - 7/4)")
    print("turns,layers,mean_diameter_m,pitch_m,wire_radius_m,inductance_H,mutual_of_first_two_H")
    for turns, layers, diameter, pitch, radius in ((1, 1, "0.5", "0.02", "0.006"), (2, 1, "0.5", "0.02", "0.006"),
                                                   (5, 1, "0.6", "0.018", "0.005"), (9, 3, "0.4", "0.016", "0.005"),
                                                   (12, 2, "0.8", "0.03", "0.007"), (10, 1, "0.3", "0.2", "0.004")):
        d, p, a = mpf(diameter), mpf(pitch), mpf(radius)
        per_layer = -(-turns // layers)
        rings = []
        for i in range(turns):
            layer, place = divmod(i, per_layer)
            rings.append((d / 2 + p * (layer - mpf(layers - 1) / 2), p * place))
        total = sum(mpf("4e-7") * pi * r * (ln(8 * r / a) - mpf(7) / 4) for r, _ in rings)
        first = mpf(0)
        for i in range(turns):
            for k in range(i):
                m = mutual(rings[i][0], rings[k][0], rings[i][1] - rings[k][1])
                if (i, k) == (1, 0):
                    first = m
                total += fmul(2, m)
        print(turns, layers, diameter, pitch, radius, nstr(total, 15), nstr(first, 15), sep=",")


{"skin": skin, "coil": coil}[sys.argv[1]]()
