#!/bin/sh
# Drives a ramp of current through resistance, leads laid out and a coil of lead whose turns are inductors of their own,
# coupled by Neumann's integral over coaxial circles (summed here in python), and reads the volts across all of it in
# ngspice; then an edge from a base current: how long a voltage needs to drive it up against an arc.
# sh run.sh > outputs.csv
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ngspice --version 2>/dev/null | sed -n 's/^\*\* \(ngspice-[0-9.]*\).*/# made by run.sh with \1/p' | head -n 1
echo "what,ohm,turns,diameter_m,pitch_m,radius_m,apart_m,laid_m,first,second,third,at,value"
while read -r what ohm turns diameter pitch radius apart laid first second third; do
    python3 - "$what" "$ohm" "$turns" "$diameter" "$pitch" "$radius" "$apart" "$laid" "$first" "$second" "$third" \
        >"$work/deck" <<'PY'
import math, sys
what = sys.argv[1]
ohm, turns, diameter, pitch, radius, apart, laid, first, second, third = (float(x) for x in sys.argv[2:])
turns = int(turns)
mu = 4e-7 * math.pi
def mutual(r, z, steps=2000):  # the double integral; one angle is enough by symmetry
    h = math.pi / steps
    return mu * r * r * sum(math.cos(h * (k + 0.5)) / math.sqrt(2 * r * r * (1 - math.cos(h * (k + 0.5))) + z * z)
                            for k in range(steps)) * h
r = diameter / 2
own = mu * r * (math.log(8 * r / radius) - 2) + 2 * math.pi * r * mu / (8 * math.pi)
pair = mu / math.pi * (math.log(apart / radius) + 0.25) * laid
print("* current through coiled leads")
for k in range(turns):
    print(f"Lturn{k} c{k} c{k + 1} {own:.12e}")
print(f"Llaid c{turns} end {pair:.12e}")
for i in range(turns):
    for k in range(i):
        print(f"K{i}x{k} Lturn{i} Lturn{k} {mutual(r, (i - k) * pitch) / own:.12e}")
if what == "ramp":  # first: A/s, second: A where it ends, third: A where it begins
    lasts = (second - third) / first
    print(f"Iramp 0 n0 pwl(0 {third} 1e-4 {third} {1e-4 + lasts:.12e} {second} 1 {second})\nRall n0 c0 {ohm}\nVend end 0 0")
    times = [1e-4 + 0.3 * lasts, 1e-4 + 0.7 * lasts, 1e-4 + 1.5 * lasts]
    print(f".options reltol=1e-7\n.tran {lasts / 2000:.6e} {2e-4 + 1.5 * lasts:.6e} 0 {lasts / 2000:.6e}")
    print(".control\nset numdgt=10\nrun")
    for n, t in enumerate(times):
        print(f"meas tran a{n} find v(n0) at={t:.12e}")
    print("quit\n.endc\n.end")
else:  # edge; first: V of the supply, second: V of the arc without current, third: A at the base; to 95 % of 200 A more
    slope = 0.02
    base_volts = second + (ohm + slope) * third
    print(f"Vall n0 0 pwl(0 {base_volts:.12e} 1e-4 {base_volts:.12e} 1.00001e-4 {first} 1 {first})\nRall n0 c0 {ohm}")
    print(f"Rarc end a0 {slope}\nVarc a0 0 {second}")
    print(".options reltol=1e-7\n.tran 1e-6 20e-3 0 1e-6\n.control\nset numdgt=10\nrun")
    print(f"meas tran a0 when i(Varc)={third + 0.95 * 200.0:.12e}\nquit\n.endc\n.end")
PY
    ngspice -b "$work/deck" </dev/null 2>/dev/null |
        awk -v case="$what,$ohm,$turns,$diameter,$pitch,$radius,$apart,$laid,$first,$second,$third" -v what="$what" '
        BEGIN { split("0.3 0.7 1.5", at, " ") }
        /^a[0-9] *= / { n++; print case "," (what == "ramp" ? at[n] : "") "," (what == "ramp" ? $3 : $3 - 1e-4) }'
done <<'CASES'
ramp 0.03 8 0.6 0.018 0.0058 0.018 10 100000 250 0
ramp 0.05 12 0.5 0.018 0.0058 0.3 15 500000 400 50
ramp 0.02 5 0.9 0.02 0.0067 0.02 25 20000 180 80
edge 0.03 8 0.6 0.018 0.0058 0.018 10 50 12 40
edge 0.05 12 0.5 0.018 0.0058 0.3 15 45 14 60
edge 0.02 5 0.9 0.02 0.0067 0.02 25 34 20 30
CASES
