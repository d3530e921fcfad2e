#!/bin/sh
# Solves the networks of elements.csv with ngspice: resistors and given currents, the supply's return as zero. Writes
# the voltage across each resistor: sh run.sh > outputs.csv
set -eu
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
ngspice --version 2>/dev/null | sed -n 's/^\*\* \(ngspice-[0-9.]*\).*/# made by run.sh with \1/p' | head -n 1
echo "network,element,drop_V"
for network in $(awk -F, '!/^#/ && $1 != "network" { print $1 }' elements.csv | uniq); do
    awk -F, -v network="$network" '
        BEGIN { n = 0 }
        $1 == network && $2 == "R" { from[n] = $4; to[n] = $5; ohm[n++] = $6 }
        $1 == network && $2 == "I" { source = source sprintf("Isource%d %s %s dc %s\n", ++sources, $5, $4, $6) }
        END {
            print "* network " network
            printf "%s", source
            for (i = 0; i < n; ++i) printf "Rpart%d %s %s %s\n", i, from[i], to[i], ohm[i]
            print "Vreturn p1 0 dc 0\n.control\nset numdgt=14\nop"
            for (i = 0; i < n; ++i) printf "print v(%s)-v(%s)\n", from[i], to[i]
            print ".endc\n.end"
        }' elements.csv >"$work/deck"
    ngspice -b "$work/deck" 2>/dev/null |
        awk -v network="$network" '/^v\([a-z0-9_]*\)-v\([a-z0-9_]*\) = / { printf "%s,%d,%s\n", network, i++, $3 }'
done
