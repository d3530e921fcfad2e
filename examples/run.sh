#!/bin/sh
# The program of the library: sh examples/run.sh [WORD ...] or [STATION.toml]; alone it assesses the demo station.
# What is written goes to build/report unless --out says where. The status is the program's own. Installs the Debian
# packages that are missing.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/cmake/packages.sh"
install_missing build io

# What the build says matters only when it fails; what was asked for is all that is printed.
[ -x "$root/build/examples/examples/weldloop_station" ] || echo "Building (some minutes, the first time) ..." >&2
mkdir -p "$root/build"
if ! (
    cd "$root" &&
        cmake --preset release -B build/examples -DWELDLOOP_TESTS=OFF &&
        cmake --build build/examples --target weldloop_station
) >"$root/build/examples.log" 2>&1; then
    cat "$root/build/examples.log" >&2
    exit 1
fi

[ $# -gt 0 ] || set -- assess "$root/examples/stations/gate_shop.toml"
out=yes
case "$1" in
    fault | lead | help | -h) out= ;;  # these write nothing
esac
for argument; do
    case "$argument" in
        --out | --help) out= ;;
    esac
done
[ -z "$out" ] || set -- "$@" --out "$root/build/report"
exec "$root/build/examples/examples/weldloop_station" "$@"
