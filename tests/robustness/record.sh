# Notes what ran, when and how it ended: one line a run in build/summary/runs.tsv, which tests/robustness.sh puts into
# the documentation. To be sourced from the repository's root.
# shellcheck shell=sh

# record CHECK DONE FAILED NOTE: columns date, commit, check, done, failed, note. A commit with a + has local changes.
record() {
    mkdir -p build/summary
    changes=$(git status --porcelain -- include tests cmake 2>/dev/null | head -1)
    printf '%s\t%s\t%s\t%s\t%s\t%s\n' "$(date -u +%Y-%m-%d)" "$(git log -1 --format=%h 2>/dev/null)${changes:++}" \
        "$1" "$2" "$3" "$4" >>build/summary/runs.tsv
}

# record_tests CHECK COMMAND...: runs ctest in any form, and notes how many tests ran and failed. Its status is that of
# the command.
record_tests() {
    check=$1
    shift
    mkdir -p build/summary
    log=build/summary/$check.log
    {
        status=0
        "$@" || status=$?  # also where the caller ends at the first failure
        echo $status >"$log.status"
    } | tee "$log"
    sum=$(sed -n 's/^.* tests passed, \([0-9]*\) tests failed out of \([0-9]*\)$/\2 \1/p' "$log")
    record "$check" "${sum% *}" "${sum#* }" ""
    return "$(cat "$log.status")"
}
