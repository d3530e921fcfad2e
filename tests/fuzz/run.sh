#!/bin/sh
# tests/fuzz/run.sh [TARGET [SECONDS]]: builds the fuzz targets with clang++, libFuzzer and the address and
# undefined-behaviour sanitizers, and feeds them: all of them for a minute each, or the named one. A finding is left in
# build/fuzz/found and ends with 1; mend its cause and keep it in tests/fuzz/corpus/TARGET, where every run of the tests
# feeds it again.
set -eu
cd "$(dirname "$0")/../.."
. cmake/packages.sh
install_missing build io test fuzz

seconds=${2:-60}
targets=${1:-quantity_text laws reading_section station_file}
cmake --preset fuzz
mkdir -p build/fuzz/found
for target in $targets; do
    cmake --build --preset fuzz --target "weldloop_fuzz_$target"
    kept=tests/fuzz/corpus/$target
    grown=build/fuzz/corpus/$target
    mkdir -p "$grown"
    words=
    case $target in
        laws) ;;
        *) words=-dict=tests/fuzz/station.dict ;;
    esac
    # the timeout is generous: the sanitizers cost a factor of ten and more
    build/fuzz/tests/fuzz/"weldloop_fuzz_$target" ${words:+"$words"} -max_total_time="$seconds" -timeout=60 \
        -rss_limit_mb=2048 -artifact_prefix="build/fuzz/found/$target-" -print_final_stats=1 "$grown" "$kept"
done
