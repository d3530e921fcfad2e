#!/bin/sh
# Writes the tables of docs/pages/performance.md anew: instructions beside the twins with both compilers, machine code
# of small kernels, growth with size, the longest that drawn questions took, times. Counts and what follows from them are held to the limits below and fail the
# run; times are information, they belong to one machine on one day. `sh bench/tables.sh --check` leaves the page alone.
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build io bench clang

page=docs/pages/performance.md
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
touch "$work/faults"

# ---- build

for compiler in g++ clang++; do
    folder=build/bench-$compiler  # of its own: CMake forgets what it was told when a folder's compiler changes
    cmake --preset release -B $folder -DCMAKE_CXX_COMPILER=$compiler -DWELDLOOP_BENCH=ON -DWELDLOOP_TESTS=OFF \
        -DWELDLOOP_EXAMPLES=OFF >"$work/log" 2>&1 || { cat "$work/log" >&2; exit 1; }
    targets="weldloop_counted_leads weldloop_counted_loops"
    # by one compiler: an exponent knows none
    [ $compiler = clang++ ] || targets="$targets weldloop_growth weldloop_longest"
    # shellcheck disable=SC2086
    cmake --build $folder --target $targets >"$work/log" 2>&1 || { cat "$work/log" >&2; exit 1; }
    # a twin that answers something else proves nothing
    $folder/bench/weldloop_counted_leads check
    $folder/bench/weldloop_counted_loops check
done
bin=build/bench-g++/bench
clang=build/bench-clang++/bench

# ---- helpers

# collected PROGRAM ARGUMENT...: instructions of the whole run
collected() {
    valgrind --tool=callgrind --callgrind-out-file=/dev/null "$@" 2>&1 >/dev/null | sed -n 's/.*Collected : //p'
}
# each PROGRAM NAME FEW MANY: instructions of one, from the difference of two runs, so that starting and preparing drop
# out
each() {
    echo $((($(collected "$1" "$2" "$4") - $(collected "$1" "$2" "$3")) / ($4 - $3)))
}
# over A B: their quotient
over() {
    awk "BEGIN { printf \"%.2f\", $1 / $2 }"
}
# hold WHAT VALUE MOST
hold() {
    awk "BEGIN { exit !($2 <= $3) }" || echo "$1: $2, at most $3 expected" | tee -a "$work/faults" >&2
}
# twins PROGRAM NAME FEW MANY WHAT MOST_RATIO AIM: a row with both compilers
twins() {
    row="| $5 |"
    for folder in $bin $clang; do
        library=$(each "$folder/$1" "$2" "$3" "$4")
        plain=$(each "$folder/$1" "plain_$2" "$3" "$4")
        ratio=$(over "$library" "$plain")
        hold "$5, $folder" "$ratio" "$6"
        row="$row $library | $plain | $ratio |"
    done
    echo "$row $7 |"
}

# ---- tables, one file each, named by its markers on the page

{
    echo "| question | g++: library | twin | ratio | clang++: library | twin | ratio | aim |"
    echo "|---|---|---|---|---|---|---|---|"
    twins weldloop_counted_leads resistance 80 240 "resistance per length at a temperature, twin without refusals" 2.2 ""
    twins weldloop_counted_leads refusing_resistance 80 240 "resistance per length, twin with the same refusals" 1.05 1.05
    twins weldloop_counted_leads conductance 80 240 "conductance of a contact with its scatter" 1.05 1.05
    twins weldloop_counted_leads hottest_spot 80 240 "hottest spot of a contact" 1.2 1.05
    twins weldloop_counted_leads behaviour 80 240 "whole behaviour of a contact" 1.6 1.6
    twins weldloop_counted_leads continuous 80 240 "continuous rating" 1.65 1.6
    twins weldloop_counted_leads peak 80 240 "peak of the conductor, 6 min of 10" 1.6 1.6
    twins weldloop_counted_leads duty 80 240 "rating at 6 min of 10" 1.6 1.6
    twins weldloop_counted_loops clamp 2 6 "clamp on its work with its cable, steady" 2.0 2
    twins weldloop_counted_loops steady 2 6 "whole loop, steady" 2.0 2
    twins weldloop_counted_loops loop 2 6 "whole loop, 6 min of 10" 2.0 2
} >"$work/twins"

{
    one=$(each $bin/weldloop_counted_leads continuous 320 960)
    together=$(($(each $bin/weldloop_counted_leads together 320 960) -
        $(each $bin/weldloop_counted_leads copied 320 960)))
    plain=$(each $bin/weldloop_counted_leads plain_continuous 320 960)
    echo "| continuous rating, g++ | instructions | over the twin |"
    echo "|---|---|---|"
    echo "| one by one | $one | $(over "$one" "$plain") |"
    echo "| together | $together | $(over "$together" "$plain") |"
    echo "| twin | $plain | 1 |"
    hold "ratings together over the twin" "$(over "$together" "$plain")" 1.6
} >"$work/batch"

{
    echo "| kernel | g++: with units | bare | | clang++: with units | bare | |"
    echo "|---|---|---|---|---|---|---|"
    sh bench/machine_code.sh g++ clang++ >"$work/code" || echo "machine code differs" | tee -a "$work/faults" >&2
    awk '{ name = $2; text = $5; for (i = 6; i <= NF; ++i) text = text " " $i
           row[$1, name] = $3 " | " $4 " | " text; if (!(name in seen)) { seen[name] = 1; order[++n] = name } }
         END { for (i = 1; i <= n; ++i) {
                   name = order[i]; shown = name; gsub("_", " ", shown)
                   print "| " shown " | " row["g++", name] " | " row["clang++", name] " |" } }' "$work/code"
} >"$work/machine_code"

# growth WHAT MOST_EXPONENT SIZE...: instructions over size, the exponent between the last two
growth() {
    what=$1 most=$2
    shift 2
    none=$(collected $bin/weldloop_growth nothing 0)
    text= before= size_before=
    for size; do
        now=$(($(collected $bin/weldloop_growth "$what" "$size") - none))
        text="$text${text:+, }$size: $(awk "BEGIN { printf \"%.1f\", $now / 1e6 }")"
        if [ -n "$before" ]; then
            exponent=$(awk "BEGIN { printf \"%.2f\", log($now / $before) / log($size / $size_before) }")
        fi
        before=$now size_before=$size
    done
    hold "growth with $what" "$exponent" "$most"
    echo "| $(echo "$what" | tr _ ' ') | $text | $exponent |"
}
{
    echo "| size | millions of instructions | last exponent |"
    echo "|---|---|---|"
    growth parts 1.25 25 50 100 200
    growth ways 2.2 2 4 8
    growth stations 1.05 5 10 20
    growth segments 1.2 8 32 128
    growth leads 1.05 100 400 1600
} >"$work/growth"

# least WHAT SIZE: the least processor seconds of three runs, and the memory of one
least() {
    for _ in 1 2 3; do $bin/weldloop_growth "$1" "$2"; done | sort -n | head -1
}
# station WHAT SIZE SHOWN MILLISECONDS MEGABYTES: a row with what is aimed at, held to the last
station() {
    found=$(least "$1" "$2")
    milliseconds=$(echo "$found" | awk '{ printf "%.0f", 1000 * $1 }')
    megabytes=$(echo "$found" | awk '{ printf "%.0f", $2 }')
    hold "memory of $3" "$megabytes" "$5"
    echo "| $3 | $milliseconds ms | $megabytes MB | $4 ms, $5 MB |"
}
{
    echo "| station | processor time | memory | aim |"
    echo "|---|---|---|---|"
    for case in "50 50 100" "1000 2000 200"; do
        # shellcheck disable=SC2086
        set -- $case
        station parts "$1" "$1 parts, assessed" "$2" "$3"
        station reported_parts "$1" "$1 parts, from its file to text, JSON and page" "$2" "$3"
        station answered_parts "$1" "$1 parts, the same with remedies and forecasts of a year" "$2" "$3"
    done
    station ways 22 "50 parts in a path and 22 ways, assessed" 50 100
} >"$work/stations"

{
    echo "| question | drawn | mean | longest | the longest was |"
    echo "|---|---|---|---|---|"
    $bin/weldloop_longest table
} >"$work/longest"

{
    echo "| question | g++: library | twin | ratio | clang++: library | twin | ratio |"
    echo "|---|---|---|---|---|---|---|"
    for program in weldloop_counted_leads weldloop_counted_loops; do
        unit=ns
        [ $program = weldloop_counted_leads ] || unit=us
        $bin/$program times >"$work/g"
        $clang/$program times >"$work/c"
        paste -d' ' "$work/g" "$work/c" | grep -v '^marched\|^together' | while read -r name a b x; do
            # shellcheck disable=SC2086
            set -- $x
            [ $# -eq 3 ] || shift
            echo "| $(echo "$name" | tr _ ' ') | $a $unit | $b $unit | $(over "$a" "$b") | $2 $unit | $3 $unit | $(over "$2" "$3") |"
        done
        [ $program = weldloop_counted_loops ] || grep '^together' "$work/g" | while read -r name a b; do
            echo "| continuous, one by one and together | $a ns | $b ns | $(over "$a" "$b") | | | |"
        done
    done
} >"$work/times"
{
    echo "| way to the settled period | time | hottest rise |"
    echo "|---|---|---|"
    $bin/weldloop_counted_loops times | awk '
        $1 == "loop" { printf "| library, network and all | %s us | as the twin |\n| twin | %s us | %s K |\n", $2, $3, $4 }
        /^marched/ { split($1, w, "_"); printf "| march from the cold, steps of %s s | %s us | %s K |\n", w[2], $2, $4 }'
    if /usr/bin/python3 -c 'import scipy' 2>"$work/log"; then
        $bin/weldloop_counted_loops numbers | /usr/bin/python3 bench/by_ode_suite.py |
            awk '{ printf "| ODE suite (SciPy, BDF), %d periods from the cold | %d us | %s K |\n", $3, 1000 * $1, $2 }'
    fi
    if ! command -v ngspice >"$work/log" || ! /usr/bin/python3 -c 'import numpy' 2>"$work/log"; then
        echo "| circuit simulator (ngspice) | not installed where this table was made | |"
    elif $bin/weldloop_counted_loops numbers | /usr/bin/python3 bench/by_circuit_simulator.py >"$work/simulated"; then
        awk '{ printf "| circuit simulator (ngspice), %d periods from the cold; %d ms to start and read it left out | %d us | %s K |\n",
                   $4, $2, 1000 * $1, $3 }' "$work/simulated"
    else
        echo "circuit simulator: no answer" | tee -a "$work/faults" >&2
    fi
} >"$work/marches"
{
    echo "| | |"
    echo "|---|---|"
    echo "| machine | $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(nproc) processors |"
    echo "| compilers | $(g++ --version | head -1); $(clang++ --version | head -1); -O3 |"
    echo "| date | $(date +%F), load $(cut -d' ' -f1 /proc/loadavg) |"
    echo "| ratings on two threads over one, in equal processor time | $($bin/weldloop_counted_leads threads | cut -d' ' -f2) |"
    load=$(cut -d' ' -f1 /proc/loadavg)
    $bin/weldloop_growth sweep 120 | while read -r clock processor; do
        echo "| stations assessed on two threads over one, in equal processor time | $processor |"
        echo "| the same by the clock on the wall, load $load before | $clock |"
    done
} >"$work/machine"

# ---- the page

if [ "${1-}" != --check ]; then
    awk -v work="$work" '
        /^<!-- table: / { print; name = $3; while ((getline line < (work "/" name)) > 0) print line; skipping = 1; next }
        /^<!-- end of table -->/ { skipping = 0 }
        !skipping' "$page" >"$work/page"
    cp "$work/page" "$page"
fi
if [ -s "$work/faults" ]; then
    echo "beyond what is expected:" >&2
    cat "$work/faults" >&2
    exit 1
fi
