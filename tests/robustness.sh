#!/bin/sh
# tests/robustness.sh [all]: writes docs/pages/robustness.md by what ran last: single faults, fuzzers, sanitizers, the
# tests under clang++, coverage. With "all" it runs all of them first, which takes some hours; each of them may also be
# run by itself, and this afterwards.
set -eu
cd "$(dirname "$0")/.."
if [ "${1:-}" = all ]; then
    failed=
    python3 tests/mutation/run.py || failed="$failed mutation"
    for target in quantity_text laws parts leads reading_section; do
        sh tests/fuzz/run.sh "$target" 600 fuzz || failed="$failed fuzz:$target"
        sh tests/fuzz/run.sh "$target" 1800 fuzz-plain || failed="$failed fuzz:$target"
    done
    sh tests/fuzz/run.sh station_file 7200 fuzz || failed="$failed fuzz:station_file"
    for gate in sanitize threads clang; do bash ".ci/$gate" || failed="$failed $gate"; done
    sh tests/coverage.sh || failed="$failed coverage"
    [ -z "$failed" ] || echo "failed:$failed"
fi
exec python3 tests/robustness/write_page.py
