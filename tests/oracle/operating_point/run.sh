#!/bin/sh
# Solves supply, loop and arc of cases.csv with ngspice: the supply by its line, the loop by the polynomial through its
# drops at five currents (drops.csv), the arc by its line. Writes current and volts: sh run.sh > outputs.csv
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ngspice --version 2>/dev/null | sed -n 's/^\*\* \(ngspice-[0-9.]*\).*/# made by run.sh with \1/p' | head -n 1
echo "station,amps,terminals_V,arc_V"
grep -v '^#' cases.csv | tail -n +2 | while IFS=, read -r station kind first second third arc slope; do
    awk -F, -v station="$station" -v kind="$kind" -v first="$first" -v second="$second" -v third="$third" \
        -v arc="$arc" -v slope="$slope" '
        BEGIN { n = 0 }
        $1 == station { amps[n] = $2; volts[n++] = $3 }
        END {
            print "* " station
            if (kind == "straight") printf "Bsupply n0 0 v=%s*(1-i(Vmeter)/%s)\n", first, second
            if (kind == "reactive") printf "Bsupply 0 n0 i=%s*sqrt(max(1-(v(n0)/%s)^2,1e-9))\n", second, first
            if (kind == "engine") printf "Bsupply n0 0 v=%s-(%s-%s)*i(Vmeter)/%s\n", first, first, third, second
            if (kind == "voltage") printf "Bsupply n0 0 v=%s-%s*i(Vmeter)\n", first, second
            if (kind == "current") printf "Bsupply 0 n0 i=%s+%s*(%s-v(n0))\n", first, third, second
            print "Vmeter n0 n1 dc 0"
            sum = ""
            for (k = 0; k < n; ++k) {
                term = volts[k]
                for (j = 0; j < n; ++j)
                    if (j != k) term = term "*(i(Vmeter)-" amps[j] ")/(" amps[k] "-" amps[j] ")"
                sum = sum (k ? "+" : "") term
            }
            printf "Bloop n1 n2 v=%s\n", sum
            printf "Barc n2 0 v=%s+%s*i(Vmeter)\n", arc, slope
            printf ".options reltol=1e-9 abstol=1e-10 vntol=1e-10 itl1=2000\n.nodeset v(n0)=%s v(n1)=%s v(n2)=%s\n", arc, arc, arc
            print ".control\nset numdgt=14\nop\nprint i(Vmeter)\nprint v(n0)\nprint v(n2)\n.endc\n.end"
        }' drops.csv >"$work/deck"
    ngspice -b "$work/deck" </dev/null 2>/dev/null | awk -v station="$station" '
        /^i\(vmeter\) = / { amps = $3 } /^v\(n0\) = / { terminals = $3 } /^v\(n2\) = / { arc = $3 }
        END { printf "%s,%s,%s,%s\n", station, amps, terminals, arc }'
done
