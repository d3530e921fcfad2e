#!/bin/sh
# tests/coverage.sh [CTEST ARGUMENT...]: builds all tests with clang's counters from nothing, runs them, and says what
# share of the lines and branches of include/ they reach. Half an hour on two cores. The table by file is left in
# build/coverage/files.txt.
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
. tests/robustness/record.sh
install_missing build io test coverage

newest() { # TOOL: as it is, or with the highest version in its name
    command -v "$1" || find /usr/bin -name "$1-[0-9]*" | sort -V | tail -1
}
profdata=$(newest llvm-profdata)
cov=$(newest llvm-cov)
build=$PWD/build/coverage
profiles=$build/profiles

cmake --preset coverage
cmake --build --preset coverage
rm -rf "$profiles"
mkdir -p "$profiles"
# %4m: four files for each program, which all its processes add to
LLVM_PROFILE_FILE="$profiles/%4m.profraw" ctest --preset coverage --parallel "$(nproc)" "$@" || echo "some tests failed"
"$profdata" merge -sparse "$profiles"/*.profraw -o "$build/all.profdata"

objects=
for program in $(find "$build" -type f -perm -u+x ! -name '*.so*' ! -path '*/CMakeFiles/*' | sort); do
    readelf -SW "$program" 2>/dev/null | grep -q __llvm_covmap || continue
    if [ -z "$objects" ]; then objects=$program; else objects="$objects -object $program"; fi
done
# shellcheck disable=SC2086  # a list of words
"$cov" report $objects -instr-profile="$build/all.profdata" "$PWD/include" >"$build/files.txt"
# shellcheck disable=SC2086
"$cov" export $objects -instr-profile="$build/all.profdata" -summary-only "$PWD/include" >"$build/summary.json"
note=$(python3 -c '
import json, sys
total = json.load(open(sys.argv[1]))["data"][0]["totals"]
print(", ".join("%s %.1f %% of %d" % (what, total[what]["percent"], total[what]["count"]) for what in ("lines", "branches")))
' "$build/summary.json")
record coverage "" "" "$note"
echo "$note"
