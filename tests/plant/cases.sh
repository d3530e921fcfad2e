#!/bin/sh
# cases.sh CASE SWEEP_THREADS MPIEXEC SWEEP_MPI: sweeps a plant in several ways; what is printed must not tell them apart.
set -u
case=$1 threads=$2 mpiexec=$3 mpi=$4
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder" || exit 1
fault() {
    echo "FAULT: $*"
    exit 1
}
# same COMMAND...: prints what the sweep by one thread printed
same() {
    "$@" >now 2>time || fault "status $? of $*: $(cat time)"
    cat time
    cmp now alone || fault "$* prints something else"
}

"$threads" 300 1 >alone 2>time || fault "$(cat time)"
cat time
[ "$(grep -c '^  bench' alone)" -eq 10 ] || fault "not the ten worst: $(cat alone)"
[ "$(awk '/worst/ { exit } { all += $1 } END { print all }' alone)" -eq 300 ] || fault "not 300 verdicts: $(cat alone)"
! grep -q 'not assessed' alone || fault "$(cat alone)"

threads_agree() {
    same "$threads" 300 2
    same "$threads" 300 7
    ! "$threads" -4 2>complaint || fault "-4 benches are swept"
    grep -q -- '-4 is no count' complaint || fault "$(cat complaint)"
}

processes_agree() {
    [ -n "$mpi" ] && [ -n "$mpiexec" ] || exit 77
    # the first two let root run it, as in a container
    export OMPI_ALLOW_RUN_AS_ROOT=1 OMPI_ALLOW_RUN_AS_ROOT_CONFIRM=1 OMPI_MCA_rmaps_base_oversubscribe=1
    same "$mpiexec" -n 1 "$mpi" 300
    same "$mpiexec" -n 2 "$mpi" 300
    "$threads" 2 1 >alone 2>time
    same "$mpiexec" -n 3 "$mpi" 2 # one process has nothing to do
}
"$case"
