#!/usr/bin/python3
"""Draws the stations of the loop march: the same hundred for the same seed. Each is marched on a coarse grid and drawn
anew where it has no settled state, where a contact's drop is far above its softening drop, or where metal passes
400 degC; and where there are enough of its kind (how hot its hottest joint gets) already.

    /usr/bin/python3 draw_stations.py > stations.csv
"""
import math
import random
import sys

import march

SEED, COUNT = 20261, 100
CONTINUOUS_EVERY = 12  # every twelfth station at 100 %
MOST_OVER_SOFTENING = 1.25  # drop over softening drop
HOTTEST = 400.0  # degC
# kinds by the peak of the hottest joint, degC, and the most of each
KINDS = ((0.0, 80.0, 34), (80.0, 250.0, 80), (250.0, HOTTEST, 8))
METRIC = (16, 25, 35, 50, 70, 95, 120)
AMERICAN = (("awg", 6), ("awg", 4), ("awg", 2), ("awg", 1), ("aught", 1), ("aught", 2), ("aught", 3), ("aught", 4))
RATED = (100, 200, 300, 400, 500, 600, 800)


def some(draw, chance):
    return draw.random() < chance


def log_uniform(draw, low, high):
    return math.exp(draw.uniform(math.log(low), math.log(high)))


def size_near(draw, wanted):
    """a lead's size of about an area, mm2"""
    if some(draw, 0.35):
        scale, number = min(AMERICAN, key=lambda s: abs(math.log(march.size_area(*s) * 1e6 / wanted)))
        return "%s:%d" % (scale, number)
    return "mm2:%d" % min(METRIC, key=lambda s: abs(math.log(s / wanted)))


def lug_on(draw, size):
    out = "lug:" + size
    if some(draw, 0.35):
        out += ":missing=%g" % draw.choice((0.1, 0.2, 0.3, 0.4, 0.5))
    if some(draw, 0.35):
        out += ":torque=%g" % draw.choice((0.5, 1, 2, 5, 10))
    if some(draw, 0.35):
        out += ":palm=" + draw.choice(("oxidized", "greasy", "light_rust"))
    return out


def station(draw, name, continuous):
    process = draw.choice(("smaw",) * 5 + ("gmaw",) * 3 + ("gtaw",) * 2)
    amps = round(draw.uniform(80, {"smaw": 300, "gmaw": 500, "gtaw": 320}[process]))
    period = round(log_uniform(draw, 10, 8 * 3600), 1)
    duty = 1.0 if continuous else draw.uniform(0.20, 0.95)
    on = period if continuous else round(duty * period, 1)
    effective = amps * math.sqrt(duty)
    air = round(draw.uniform(0, 40), 1)

    def lead(size, short=2.0, long=40.0):
        return "cable:%s:%.1f" % (size, log_uniform(draw, short, long))

    size = size_near(draw, effective / draw.uniform(2.5, 6.5))
    first = [lug_on(draw, size)] if some(draw, 0.7) else []
    first.append(lead(size))
    if some(draw, 0.35):
        if some(draw, 0.7):
            plug = "coupling:" + size
            if some(draw, 0.4):
                plug += ":force=%d" % round(log_uniform(draw, 10, 200))
            if some(draw, 0.3):
                plug += ":surface=" + draw.choice(("oxidized", "greasy", "light_rust"))
            first += [plug, lead(size, 1.5, 8.0)]
        else:
            first += [lug_on(draw, size), lug_on(draw, size), lead(size, 1.5, 8.0)]
    if process == "smaw":
        rated = draw.choice([r for r in (150, 200, 300, 400, 500, 600) if r >= 0.7 * effective][:3] or [600])
        head = "holder:%d" % rated
        if some(draw, 0.5):
            head += ":surface=" + draw.choice(("greasy", "galvanized", "galvanized"))
        first.append(head)
    else:
        if some(draw, 0.5):
            first.append(lug_on(draw, size))
        if process == "gmaw":
            first.append("gun:%.1f" % draw.uniform(2.0, 5.0))
        else:
            first.append("torch:%s:%.1f" % ("water" if amps > 180 or some(draw, 0.3) else "gas", draw.uniform(3.0, 8.0)))

    work = []
    if some(draw, 0.35):
        metals = draw.choice((("steel", "steel"), ("steel", "steel"), ("steel", "copper"), ("aluminium", "steel"),
                              ("brass", "steel")))
        contact = "contact:force=%d:surface=%s" % (round(log_uniform(draw, 200, 8000)),
                                                   draw.choice(("clean", "clean", "oxidized", "light_rust")))
        if metals != ("steel", "steel"):
            contact += ":first=%s:second=%s" % metals
        work.append(contact)
        if some(draw, 0.8):
            work.append("plate:%.2f:%.2f:%.3f" % (log_uniform(draw, 0.2, 2.0), log_uniform(draw, 0.05, 1.0),
                                                  log_uniform(draw, 0.004, 0.020)))
    back = size if some(draw, 0.6) else size_near(draw, effective / draw.uniform(2.5, 6.5))
    kind = draw.choice(("spring", "spring", "spring", "screw", "screw", "bolted"))
    if kind == "bolted" and march.size_area(*back.split(":")) < 16.1e-6:
        kind = "spring"
    if kind == "bolted":
        clamp = "clamp:bolted:" + back
    else:
        clamp = "clamp:%s:%d" % (kind, draw.choice([r for r in RATED if r >= 0.6 * effective][:3]))
    clamp += ":surface=" + draw.choice(("clean", "oxidized", "greasy", "galvanized", "light_rust", "light_rust",
                                        "mill_scale_bitten", "spatter_covered"))
    if kind != "bolted" and some(draw, 0.5):
        clamp += ":lost=%.2f" % draw.uniform(0.05, 0.6)
    if some(draw, 0.5):
        clamp += ":work=%.3f" % log_uniform(draw, 0.003, 0.025)
    work.append(clamp)
    if kind != "bolted" and some(draw, 0.6):
        work.append(lug_on(draw, back))
    work.append(lead(back))
    if some(draw, 0.25):
        work += ["coupling:" + back, lead(back, 2.0, 10.0)]
    if some(draw, 0.7):
        work.append(lug_on(draw, back))
    path = first + ["arc"] + work
    if some(draw, 0.2):
        path.reverse()  # the rod on the other pole
    return {"id": name, "amps": str(amps), "on_s": "%.1f" % on, "period_s": "%.1f" % period, "air_c": "%.1f" % air,
            "process": process, "path": " ".join(path)}


def hottest_joint(rows):
    return max(r[5] for r in rows if r[3] not in ("part", "conductor", "total")) - march.ZERO


def main():
    draw = random.Random(SEED)
    left = [k[2] for k in KINDS]
    print("# drawn by draw_stations.py, seed %d; the path in the order of the current, SI units but for sizes" % SEED)
    print("id,amps,on_s,period_s,air_c,process,path")
    made = tried = 0
    while made < COUNT:
        tried += 1
        s = station(draw, "s%03d" % (made + 1), (made + 1) % CONTINUOUS_EVERY == 0)
        loop = march.Loop(s, march.COARSE)
        try:
            rows = loop.run(quick=True)
        except RuntimeError:
            continue
        if rows is None or loop.worst_softening > MOST_OVER_SOFTENING or loop.hottest > HOTTEST:
            continue
        hot = hottest_joint(rows)
        kind = next(i for i, k in enumerate(KINDS) if k[0] <= max(hot, 0.0) < k[1])
        if left[kind] == 0:
            continue
        left[kind] -= 1
        made += 1
        print(",".join(s[c] for c in ("id", "amps", "on_s", "period_s", "air_c", "process", "path")), flush=True)
        print("%d of %d: hottest joint %.0f degC, metal %.0f degC, %.2f of softening" %
              (made, tried, hot, loop.hottest, loop.worst_softening), file=sys.stderr, flush=True)


if __name__ == "__main__":
    main()
