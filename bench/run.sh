#!/bin/sh
# Builds the benchmarks optimised and runs them, repeated and interleaved so that a disturbance hits all alike. Read the
# ratios, not the times. Further arguments go to the benchmark program: sh bench/run.sh --benchmark_filter=loop
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build bench

cmake --preset release -B build/bench -DWELDLOOP_BENCH=ON -DWELDLOOP_TESTS=OFF -DWELDLOOP_EXAMPLES=OFF
cmake --build build/bench --target weldloop_bench
exec build/bench/bench/weldloop_bench --benchmark_repetitions=9 --benchmark_enable_random_interleaving=true \
    --benchmark_report_aggregates_only=true "$@"
