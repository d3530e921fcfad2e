#!/bin/sh
# Counts the instructions of one rating of a lead, beside a program on plain numbers that calls nothing of the library,
# and of a whole loop: solved, judged with its scatter, its remedies weighed, its joints looked ahead,
# its report written as a page.
# Counts do not depend on what else the machine does; they do on compiler and C library.
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build bench

cmake --preset release -B build/bench -DWELDLOOP_BENCH=ON -DWELDLOOP_TESTS=OFF -DWELDLOOP_EXAMPLES=OFF >&2
cmake --build build/bench --target weldloop_counted >&2

# collected NAME HOW_MANY: instructions of the whole run
collected() {
    valgrind --tool=callgrind --callgrind-out-file=/dev/null build/bench/bench/weldloop_counted "$1" "$2" 2>&1 >/dev/null |
        sed -n 's/.*Collected : //p'
}
# each NAME: instructions of one, from the difference of two runs, so that starting and preparing drop out
few=80
many=240
each() {
    echo $((($(collected "$1" $many) - $(collected "$1" $few)) / (many - few)))
}
# row WHAT LIBRARY PLAIN: a line of the table, PLAIN may be empty
row() {
    library=$(each "$2")
    if [ -n "${3-}" ]; then
        plain=$(each "$3")
        ratio=$(awk "BEGIN { printf \"%.2f\", $library / $plain }")
    else
        plain=- ratio=-
    fi
    printf '%-42s %10s %10s %8s\n' "$1" "$library" "$plain" "$ratio"
}
printf '%-42s %10s %10s %8s\n' "instructions of" library plain ratio
row "resistance per length" resistance plain_resistance
row "continuous rating" continuous plain_continuous
row "rating at 6 min of 10" duty
row "temperatures under 6 min of 10" heating
few=2
many=4
row "loop solved" loop
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
