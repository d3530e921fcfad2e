#!/bin/sh
# Counts the instructions of what is asked of a whole loop: solved, judged with its scatter, its remedies weighed, its
# joints looked ahead, its report written as a page. Beside their twins questions are counted by bench/tables.sh.
# Counts do not depend on what else the machine does; they do on compiler and C library.
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build bench

cmake --preset release -B build/bench -DWELDLOOP_BENCH=ON -DWELDLOOP_TESTS=OFF -DWELDLOOP_EXAMPLES=OFF >&2
cmake --build build/bench --target weldloop_counted weldloop_counted_loops >&2

program=weldloop_counted
# collected NAME HOW_MANY: instructions of the whole run
collected() {
    valgrind --tool=callgrind --callgrind-out-file=/dev/null "build/bench/bench/$program" "$1" "$2" 2>&1 >/dev/null |
        sed -n 's/.*Collected : //p'
}
# each NAME: instructions of one, from the difference of two runs, so that starting and preparing drop out
few=2
many=4
each() {
    echo $((($(collected "$1" $many) - $(collected "$1" $few)) / (many - few)))
}
# row WHAT NAME: a line of the table
row() {
    printf '%-42s %10s\n' "$1" "$(each "$2")"
}
printf '%-42s %10s\n' "instructions of" library
program=weldloop_counted_loops
row "loop solved" loop
program=weldloop_counted
row "station judged" judged
row "station assessed" assessed
row "grip forecast of 2000 h" march
row "joints over 2000 h" drift
row "remedies weighed" remedies
row "page written" page
row "part at fault by nine readings" fault
few=1
many=2
row "grip map of 20 by 12" map
