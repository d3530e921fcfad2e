#!/bin/sh
# Solves every case of the decks beside this script with gmsh and getdp.
#   sh run.sh FILE         writes the results to FILE, as outputs.csv is kept
#   sh run.sh --check      solves again and compares with outputs.csv: every resistance within 0.2 %
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
cp "$here/conduction.pro" .

# solve CASE DECK DIMENSION FACTOR "mesh settings" "solver settings": FACTOR turns the heat of the mesh into the whole's
solve() {
    case_name=$1 deck=$2 dimension=$3 factor=$4
    # shellcheck disable=SC2086  # lists of words
    gmsh "-$dimension" -format msh22 -v 1 $5 "$here/$deck" -o m.msh >/dev/null
    # shellcheck disable=SC2086
    getdp conduction.pro -msh m.msh -solve R -pos heat -v 1 $6 >/dev/null
    nodes=$(awk '/^\$Nodes/ { getline; print $1; exit }' m.msh)
    settings=$(echo "$5 $6" | sed 's/-setnumber //g; s/Axisymmetric 1//; s/  */ /g; s/^ //; s/ $//')
    awk -v c="$case_name" -v s="$settings" -v f="$factor" -v n="$nodes" \
        '{ printf "%s,%s,%.6g,%s\n", c, s, 1 / (f * $2), n }' heat.txt
}
set_() { out=; while [ $# -gt 0 ]; do out="$out -setnumber $1 $2"; shift 2; done; echo "$out"; }

all() {
    echo "case,settings,resistance,nodes"
    turn=6.283185307179586
    axis=$(set_ Axisymmetric 1)
    for b in 150 300 1000; do solve half_space round_spot.geo 2 $turn "$(set_ Sink 0 B $b H $b)" "$axis"; done
    for t in 2 3 5 10 30; do solve sheet round_spot.geo 2 $turn "$(set_ Sink 1 B 300 H $t)" "$axis"; done
    solve sheet round_spot.geo 2 $turn "$(set_ Sink 1 B 50 H 10)" "$axis"
    for b in 1.25 1.5 2 3 5 10 30; do
        solve bar round_spot.geo 2 $turn "$(set_ Sink 2 B $b H "$(awk "BEGIN { print 6 * $b }")")" "$axis"
    done
    for l in 0.5 1 1.5 2 3 4 5 10; do solve lap lap_joint.geo 2 1 "$(set_ L $l)" ""; done
    for l in 2 5; do
        for k in 10 30 100 300 1000 10000; do solve lap lap_joint.geo 2 1 "$(set_ L $l Layer 0.01)" "$(set_ Rho3 $k)"; done
    done
    solve lap lap_joint.geo 2 1 "$(set_ L 5)" "$(set_ Rho2 3)"
    solve lap lap_joint.geo 2 1 "$(set_ L 5)" "$(set_ Rho2 10)"
    solve lap lap_joint.geo 2 1 "$(set_ L 5 Layer 0.01)" "$(set_ Rho2 3 Rho3 100)"
    solve one_spot four_spots.geo 3 4 "$(set_ D 0 B 300)" ""
    for d in 3 4 5 7 10 20; do solve four_spots four_spots.geo 3 4 "$(set_ D $d B 300)" ""; done
}

if [ "${1:-}" = --check ]; then
    all >now.csv
    awk -F, 'NR == FNR { kept[$1 "," $2] = $3; next }
             FNR > 1 && !(($1 "," $2) in kept) { print "no kept output: " $1 " " $2; bad = 1; next }
             FNR > 1 { e = $3 / kept[$1 "," $2] - 1; if (e < 0) e = -e
                       if (!(e < 0.002)) { print $1 " " $2 ": " $3 " was " kept[$1 "," $2]; bad = 1 } else good++ }
             END { print good + 0 " cases agree"; exit bad }' "$here/outputs.csv" now.csv
elif [ $# -eq 1 ]; then
    all >results.csv
    cd "$here" && cp "$work/results.csv" "$1"
else
    sed -n '2,4p' "$0"
    exit 2
fi
