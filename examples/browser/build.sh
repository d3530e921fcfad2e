#!/bin/sh
# The station program as one page: sh examples/browser/build.sh [FOLDER]. It needs Emscripten, takes some minutes, and
# leaves station.html in the folder, beside engine.js and engine.wasm, which the page holds. Without a folder it installs
# the Debian packages that are missing and writes to build/browser.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
. "$root/cmake/packages.sh"
[ $# -gt 0 ] || install_missing build io browser
out=${1:-$root/build/browser}
mkdir -p "$out"

# Debian's Emscripten takes one module from node's own folder; a node from elsewhere does not look there.
NODE_PATH=${NODE_PATH:-/usr/share/nodejs}
export NODE_PATH
# Boost and toml++ are headers alone, and those of the machine will do; -idirafter keeps its C library out.
em++ -std=c++20 -O2 -fexceptions -DTOML_HEADER_ONLY=1 -I "$root/include" -idirafter /usr/include \
    "$here/binding.cpp" -o "$out/engine.js" \
    -s ALLOW_MEMORY_GROWTH=1 -s MODULARIZE=1 -s EXPORT_NAME=weldloop_engine -s ENVIRONMENT=worker,node -s FILESYSTEM=0 \
    -s EXPORTED_FUNCTIONS=_weldloop_report,_malloc,_free
node "$here/assemble.js" "$out/engine.js" "$out/engine.wasm" "$root/examples/stations" "$out/station.html"
echo "Written: $out/station.html"
