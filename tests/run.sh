#!/bin/sh
# Builds and runs all tests; ctest's summary comes last. Installs the Debian packages that are missing.
# Further arguments go to ctest: sh tests/run.sh -L negative
set -eu
cd "$(dirname "$0")/.."
. cmake/packages.sh
install_missing build io test

jobs=$(nproc)
cmake --preset dev
cmake --build --preset dev --parallel "$jobs"
exec ctest --preset dev --parallel "$jobs" "$@"
