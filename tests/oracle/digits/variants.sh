#!/bin/sh
# Laws and whole answers by every compiler at hand, without and with optimisation, multiplication and addition fused or
# apart, against g++ -O0; the table goes to variants.md, which docs/pages/digits.md takes over. A processor without FMA
# leaves those lines out. Fails where a law differs by more than 1e-12 or twice what its row allows, which is 1e-8 at most
# (what a march is off by is the same with every compiler), or an answer by more than 1e-9.
set -eu
cd "$(dirname "$0")"
root=../../..
. $root/cmake/packages.sh
install_missing build clang
out=${1:-$(mktemp -d)}
flags="-std=c++20 -I $root/include -I $root/tests"

build() { # name, compiler and its flags
    name=$1
    shift
    for program in variants answers; do
        [ -x "$out/$program.$name" ] || "$@" $flags $program.cpp -o "$out/$program.$name"
    done
    "$out/variants.$name" rows.csv > "$out/variants.$name.txt"
    "$out/answers.$name" > "$out/answers.$name.txt"
}

# the largest difference from the first file and where it is; a probability by itself, all else as a share of the value
compare() { # file of g++ -O0, other file, least bound
    awk -v bound="$3" -v most_allowed=1e-8 '
        function size(x) { return x < 0 ? -x : x }
        NR == FNR { first[FNR] = $3; names[FNR] = $1; next }
        $1 != names[FNR] { print "line " FNR " is " $1 > "/dev/stderr"; bad = 1; exit 1 }
        {
            apart = size($3 - first[FNR])
            if ($1 !~ /exceeds|fault/ && first[FNR] != 0) apart /= size(first[FNR])
            allowed = 2 * $4 > bound ? 2 * $4 : bound + 0
            if (allowed > most_allowed) allowed = most_allowed
            if (!(apart <= allowed)) { print $1, $2, $3, "for", first[FNR], "apart by", apart > "/dev/stderr"; bad = 1 }
            if (allowed == bound + 0 && apart > most) { most = apart; where = $1 }
            if (apart == 0) same++
        }
        END { printf "%d of %d equal, %.1e%s", same, FNR, most, where == "" ? "" : " (`" where "`)"; exit bad }
    ' "$1" "$2"
}

fused=$(grep -qw fma /proc/cpuinfo 2> /dev/null && echo yes || echo no)
{
    echo "## Other compilers {#digits_variants}"
    echo
    echo "The same laws at the same rows, and whole answers (ratings of a lead, two benches assessed, a clamp's forecast, a"
    echo "search for the part at fault), compared with \`g++ -O0\`: how many numbers are equal to the last digit, and the"
    echo "largest relative difference, of probabilities the difference itself. Laws whose rows allow more than 5e-13, marches among"
    echo "them, are held to twice that, 1e-8 at most, and do not count here. Written by \`tests/oracle/digits/variants.sh\` on $(date +%Y-%m-%d) with $(g++ --version | head -n 1),"
    echo "$(clang++ --version | head -n 1); the same standard library."
    echo
    echo "| compiled by | laws | whole answers |"
    echo "|---|---|---|"
} > "$out/variants.md"
build reference g++ -O0 -ffp-contract=off
status=0
line() { # title, compiler and its flags
    name=$(echo "$*" | tr -c 'a-z0-9A-Z\n' '_')
    title=$1
    shift
    build "$name" "$@"
    laws=$(compare "$out/variants.reference.txt" "$out/variants.$name.txt" 1e-12) || status=1
    answers=$(compare "$out/answers.reference.txt" "$out/answers.$name.txt" 1e-9) || status=1
    echo "| $title | $laws | $answers |" >> "$out/variants.md"
}
line "g++ -O3" g++ -O3 -ffp-contract=off
[ "$fused" = no ] || line "g++ -O3, fused" g++ -O3 -mfma -ffp-contract=fast
line "clang++ -O0" clang++ -O0 -ffp-contract=off
line "clang++ -O3" clang++ -O3 -ffp-contract=off
[ "$fused" = no ] || line "clang++ -O3, fused" clang++ -O3 -mfma -ffp-contract=fast
cat "$out/variants.md"
[ $status = 0 ] && cp "$out/variants.md" variants.md
exit $status
