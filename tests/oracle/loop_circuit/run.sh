#!/bin/sh
# Solves the series loops of resistances.csv with ngspice: a current source, every part a resistor, the arc a source of
# 24 V. Writes the voltage across each part: sh run.sh > outputs.csv
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ngspice --version 2>/dev/null | sed -n 's/^\*\* \(ngspice-[0-9.]*\).*/# made by run.sh with \1/p' | head -n 1
echo "loop,part,drop_V"
for loop in $(awk -F, '!/^#/ && $1 != "loop" { print $1 }' resistances.csv | uniq); do
    awk -F, -v loop="$loop" '
        $1 == loop { if (!n) print "* series loop " loop; amps = $2; ohm[n++] = $4 }
        END {
            printf "Isource 0 n0 dc %s\n", amps
            for (i = 0; i < n; ++i)
                if (ohm[i] == "arc") printf "Vpart%d n%d n%d dc 24\n", i, i, i + 1
                else printf "Rpart%d n%d n%d %s\n", i, i, i + 1, ohm[i]
            printf "Vreturn n%d 0 dc 0\n.control\nset numdgt=14\nop\n", n
            for (i = 0; i < n; ++i) printf "print v(n%d)-v(n%d)\n", i, i + 1
            print ".endc\n.end"
        }' resistances.csv >"$work/deck"
    ngspice -b "$work/deck" 2>/dev/null | awk -v loop="$loop" '/^v\(n[0-9]*\)-v\(n[0-9]*\) = / { printf "%s,%d,%s\n", loop, i++, $3 }'
done
