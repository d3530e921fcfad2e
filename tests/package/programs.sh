#!/bin/sh
# The programs of tests/package/programs with the library as one file: sh programs.sh HEADER [run]
#
# Without `run` they are parsed, all in one unit, which takes seconds; with it each is compiled by itself, run, and must
# print numbers. CXX is the compiler. Works in the current folder.
set -eu
header=$1
what=${2:-parse}
programs=$(cd "$(dirname "$0")/programs" && pwd)
compiler="${CXX:-g++} ${CXXFLAGS-} -std=c++20"

mkdir -p one/weldloop
cp "$header" one/weldloop/weldloop.hpp
: >all.cpp
tried=0
for program in "$programs"/*.cpp; do
    name=$(basename "$program" .cpp)
    tried=$((tried + 1))
    if [ "$what" != run ]; then
        printf '#define main main_of_%s\n#include "%s"\n#undef main\n' "$name" "$program" >>all.cpp
        continue
    fi
    $compiler -I one "$program" -o "$name"
    echo "== $name"
    "./$name" >"$name.txt"
    cat "$name.txt"
    grep -q '[0-9]' "$name.txt"
    if grep -qiwE 'nan|inf' "$name.txt"; then
        echo "$name prints what is no number" >&2
        exit 1
    fi
done
# a function that is not called main has to return
[ "$what" = run ] || $compiler -Wno-return-type -I one -fsyntax-only all.cpp
echo "$tried programs"
[ "$tried" -eq 8 ]
