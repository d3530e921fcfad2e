#!/bin/sh
# Assesses a welding station: sh examples/run.sh [station.toml]
# Writes its pages to build/report. The status is the program's own. Installs the Debian packages that are missing.
set -eu
station=${1-}
case "$station" in
    "" | /*) ;;
    *) station=$PWD/$station ;;
esac
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build io

# What the build says matters only when it fails; the table is what was asked for.
echo "Building (a minute, the first time) ..." >&2
mkdir -p build
if ! {
    cmake --preset release -B build/examples -DWELDLOOP_TESTS=OFF &&
        cmake --build build/examples --target weldloop_station
} >build/examples.log 2>&1; then
    cat build/examples.log >&2
    exit 1
fi
exec build/examples/examples/weldloop_station "${station:-examples/stations/gate_shop.toml}" --out build/report
