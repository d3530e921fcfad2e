#!/bin/sh
# Compares the machine code of small kernels with quantities and with bare numbers (bench/machine_code.cpp): the table
# says which are equal, instruction by instruction, once labels are numbered in the order they appear. Fails where a
# kernel that shall be equal is not. `sh bench/machine_code.sh g++ clang++` for other compilers than these two.
set -eu
cd "$(dirname "$0")/.."
[ $# -gt 0 ] || set -- g++ clang++
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# these refuse what cannot be, which bare numbers do not
checked="hotter_by checked_constriction"

# code_of NAME FILE: instructions of a function, its labels and constants renamed by their order
code_of() {
    awk -v name="$1:" '
        $1 == name { inside = 1; next }
        inside && (/^[ \t]*\.(size|cfi_endproc)/ || /^\.Lfunc_end/) { exit }
        !inside || /^[ \t]*[.#]/ && !/^\.L.*:/ { next }
        {
            sub(/[ \t]*#.*/, "")
            line = $0; out = ""
            while (match(line, /\.L[A-Za-z0-9_]+/)) {
                label = substr(line, RSTART, RLENGTH)
                if (!(label in known)) known[label] = "L" ++count
                out = out substr(line, 1, RSTART - 1) known[label]
                line = substr(line, RSTART + RLENGTH)
            }
            if (out line != "") print out line
        }' "$2"
}

faults=0
for compiler; do
    "$compiler" -std=c++20 -O2 -S -fno-asynchronous-unwind-tables -I include bench/machine_code.cpp -o "$work/all.s"
    for name in $(sed -n 's/^\([a-z_]*\)_units:.*/\1/p' "$work/all.s"); do
        code_of "${name}_units" "$work/all.s" >"$work/units"
        code_of "${name}_bare" "$work/all.s" >"$work/bare"
        [ -s "$work/bare" ] || { echo "no code of $name" >&2; exit 1; }
        counts="$(wc -l <"$work/units") $(wc -l <"$work/bare")"
        is_checked=no
        for c in $checked; do [ "$c" = "$name" ] && is_checked=yes; done
        if cmp -s "$work/units" "$work/bare"; then
            found=equal
        elif [ $is_checked = yes ]; then
            found="checks its result"
        else
            found=DIFFERENT
            faults=$((faults + 1))
        fi
        # shellcheck disable=SC2086
        printf '%-10s %-22s %4s %4s  %s\n' "$compiler" "$name" $counts "$found"
    done
done
exit $((faults > 0))
