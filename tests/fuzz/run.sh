#!/bin/sh
# tests/fuzz/run.sh [TARGET [SECONDS [VARIANT]]]: builds the fuzz targets with clang++ and libFuzzer, and feeds them: all
# of them for a minute each, or the named one. VARIANT is "fuzz", with the address and undefined-behaviour sanitizers, or
# "fuzz-plain", optimised and without them, for many executions. A finding is left in build/fuzz/found and ends with 1;
# mend its cause and keep it in tests/fuzz/corpus/TARGET, where every run of the tests feeds it again. What was run is
# noted for the documentation.
# tests/fuzz/run.sh least [TARGET]: keeps in tests/fuzz/corpus/TARGET the few small inputs of what is kept and what was
# grown by runs that together reach what all do; a list of functions needs one and more for each of them.
set -eu
cd "$(dirname "$0")/../.."
. cmake/packages.sh
. tests/robustness/record.sh
install_missing build io test fuzz

all="quantity_text laws parts leads reading_section station_file"
if [ "${1:-}" = least ]; then
    cmake --preset fuzz-plain
    for target in ${2:-$all}; do
        cmake --build --preset fuzz-plain --target "weldloop_fuzz_$target"
        program=build/fuzz-plain/tests/fuzz/weldloop_fuzz_$target
        kept=tests/fuzz/corpus/$target
        candidates=build/fuzz/least/$target
        rm -rf "$candidates"
        mkdir -p "$candidates" "build/fuzz/corpus/$target"
        "$program" -merge=1 -use_counters=0 "$candidates" "build/fuzz/corpus/$target" "$kept"
        case $target in
            laws | parts) most=224 ;;
            leads | quantity_text) most=128 ;;
            *) most=64 ;;
        esac
        python3 tests/fuzz/keep_least.py "$program" "$candidates" "$kept" "$most"
    done
    exit 0
fi
targets=${1:-$all}
seconds=${2:-60}
variant=${3:-fuzz}
cmake --preset "$variant"
mkdir -p build/fuzz/found build/summary
broken=0
for target in $targets; do
    cmake --build --preset "$variant" --target "weldloop_fuzz_$target"
    kept=tests/fuzz/corpus/$target
    grown=build/fuzz/corpus/$target
    mkdir -p "$grown"
    words=
    case $target in
        laws | parts | leads) ;;
        *) words=-dict=tests/fuzz/station.dict ;;
    esac
    # with sanitizers the timeout is generous: they cost a factor of ten and more
    longest=60
    [ "$variant" = fuzz ] || longest=10
    log=build/summary/fuzz_$target.log
    status=0
    "build/$variant/tests/fuzz/weldloop_fuzz_$target" ${words:+"$words"} -max_total_time="$seconds" \
        -timeout="$longest" -report_slow_units=1 -rss_limit_mb=2048 -artifact_prefix="build/fuzz/found/$target-" \
        -print_final_stats=1 "$grown" "$kept" 2>"$log" || status=$?
    tail -20 "$log"
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
    slowest=$(sed -n 's/^stat::slowest_unit_time_sec: *//p' "$log")
    found=0
    [ "$status" -eq 0 ] || found=1
    record "fuzz $target" "${runs:-0}" "$found" "$variant; slowest ${slowest:-?} s"
    [ "$status" -eq 0 ] || broken=1
done
exit $broken
