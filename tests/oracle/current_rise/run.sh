#!/bin/sh
# Steps a voltage on resistance, leads laid out and a coil of lead whose turns are inductors of their own, coupled by
# Neumann's integral over coaxial circles (summed here in python), and has ngspice follow the current in time:
# sh run.sh > outputs.csv
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ngspice --version 2>/dev/null | sed -n 's/^\*\* \(ngspice-[0-9.]*\).*/# made by run.sh with \1/p' | head -n 1
echo "volts,ohm,turns,diameter_m,pitch_m,radius_m,apart_m,laid_m,after_s,amps"
while read -r volts ohm turns diameter pitch radius apart laid; do
    python3 - "$volts" "$ohm" "$turns" "$diameter" "$pitch" "$radius" "$apart" "$laid" >"$work/deck" <<'PY'
import math, sys
volts, ohm, turns, diameter, pitch, radius, apart, laid = (float(x) for x in sys.argv[1:])
turns = int(turns)
mu = 4e-7 * math.pi
def mutual(r, z, steps=2000):  # the double integral; one angle is enough by symmetry
    h = math.pi / steps
    return mu * r * r * sum(math.cos(h * (k + 0.5)) / math.sqrt(2 * r * r * (1 - math.cos(h * (k + 0.5))) + z * z)
                            for k in range(steps)) * h
r = diameter / 2
# a turn by itself: filaments apart by the conductor's radius, and the internal part
own = mu * r * (math.log(8 * r / radius) - 2) + 2 * math.pi * r * mu / (8 * math.pi)
pair = mu / math.pi * (math.log(apart / radius) + 0.25) * laid
print("* current through coiled leads")
print(f"Vstep n0 0 pwl(0 0 1e-9 {volts})\nRall n0 c0 {ohm}")
for k in range(turns):
    print(f"Lturn{k} c{k} c{k + 1} {own:.12e}")
print(f"Llaid c{turns} 0 {pair:.12e}")
for i in range(turns):
    for k in range(i):
        print(f"K{i}x{k} Lturn{i} Lturn{k} {mutual(r, (i - k) * pitch) / own:.12e}")
ends = " ".join(str(t) for t in (2e-5, 1e-4, 3e-4, 1e-3, 2e-3, 4e-3))
print(".options reltol=1e-6\n.tran 1e-6 4e-3 0 1e-6 uic")
print(".control\nset numdgt=10\nrun")
for n, t in enumerate(ends.split()):
    print(f"meas tran a{n} find i(Vstep) at={t}")
print(".endc\n.end")
PY
    ngspice -b "$work/deck" </dev/null 2>/dev/null | awk -v case="$volts,$ohm,$turns,$diameter,$pitch,$radius,$apart,$laid" '
        BEGIN { split("2e-5 1e-4 3e-4 1e-3 2e-3 4e-3", at, " ") }
        /^a[0-9] *= / { print case "," at[++n] "," (-$3) }'
done <<'CASES'
27 0.03 8 0.6 0.018 0.0058 0.018 10
40 0.05 12 0.5 0.018 0.0058 0.3 15
65 0.2 5 0.9 0.02 0.0067 0.02 25
CASES
