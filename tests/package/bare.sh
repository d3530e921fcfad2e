#!/bin/sh
# Every way of docs/pages/embedding.md on a bare machine: for each a minimal Debian root with nothing but the packages the
# page names, an empty folder, the page's files and its commands, and what it says is printed. Without the network, but
# for the way that installs what it needs. Closes with a table; status 1 if a way failed.
#
#     sh tests/package/bare.sh [WAY ...]      # all of them without arguments; needs root, mmdebstrap and git
#     sh tests/package/bare.sh --list
#
# The sources are those of the last commit. WELDLOOP_BARE is the folder it works in, where the root and what was
# downloaded are kept for the next time; WELDLOOP_MIRROR is where packages come from.
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
work=${WELDLOOP_BARE:-/var/tmp/weldloop-bare}
mirror=${WELDLOOP_MIRROR:-http://deb.debian.org/debian}
release=bookworm

if [ "${1-}" = --list ]; then
    ways=$(mktemp -d)
    trap 'rm -rf "$ways"' EXIT
    awk -v out="$ways" -f "$top/tests/package/ways_of_page.awk" "$top/docs/pages/embedding.md"
    exit
fi
if [ "$(id -u)" -ne 0 ]; then
    echo "bare.sh: a root of its own takes root" >&2
    exit 1
fi

mkdir -p "$work/packages/partial"
rm -rf "$work/ways"
all=$(awk -v out="$work/ways" -f "$top/tests/package/ways_of_page.awk" "$top/docs/pages/embedding.md")
[ $# -gt 0 ] || set -- $all
for way; do
    if [ ! -e "$work/ways/$way/commands" ]; then
        echo "bare.sh: the page has no way '$way'; it has:" $all >&2
        exit 1
    fi
done
git -C "$top" archive --prefix=weldloop/ -o "$work/weldloop.tar.gz" HEAD

# Lists of packages stay in it, so that a way needs no more of the mirror than its packages.
if [ ! -d "$work/base" ]; then
    mmdebstrap --variant=apt --skip=cleanup/apt "$release" "$work/base.part" "deb $mirror $release main" >&2
    mv "$work/base.part" "$work/base"
fi

# Runs a command in the root with namespaces of its own, which end with it, and what is mounted in them too.
# in_root SPACE COMMAND ...
in_root() {
    space=$1
    shift
    unshare --mount --pid --fork --kill-child $space sh -ec '
        mount -t proc proc "$0/root/proc"
        mount --bind "$0/packages" "$0/root/var/cache/apt/archives"
        root=$0/root
        exec env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive \
            ${CMAKE_BUILD_PARALLEL_LEVEL:+CMAKE_BUILD_PARALLEL_LEVEL=$CMAKE_BUILD_PARALLEL_LEVEL} \
            chroot "$root" "$@"' "$work" "$@"
}

# One way; its output goes to a log, and what it took to $installing and $running.
try() {
    way=$1
    rm -rf --one-file-system "$work/root"
    cp -a --reflink=auto "$work/base" "$work/root"
    cp --remove-destination /etc/resolv.conf "$work/root/etc/resolv.conf"
    mkdir -p "$work/root/try/empty"
    cp "$work/weldloop.tar.gz" "$work/root/try/"

    began=$(date +%s)
    read -r packages <"$work/ways/$way/packages" || true
    if [ -n "$packages" ]; then
        # shellcheck disable=SC2086  # a list of words
        in_root "" apt-get install -y -qq --no-install-recommends $packages || return 1
    fi
    installed=$(date +%s)
    installing=$((installed - began))

    find "$work/ways/$way/files" -type f -exec cp {} "$work/root/try/empty/" \;
    cp "$work/ways/$way/commands" "$work/root/try/commands"
    network=--net
    [ -n "$packages" ] || network=
    in_root "$network" sh -ec 'cd /try/empty && sh -ex ../commands >../printed' || return 1
    running=$(($(date +%s) - installed))
    read -r prints <"$work/ways/$way/prints"
    if ! grep -qF -e "$prints" "$work/root/try/printed"; then
        echo "it does not print '$prints' but"
        cat "$work/root/try/printed"
        return 1
    fi
}

table="$work/table"
: >"$table"
failed=0
for way; do
    echo "== $way" >&2
    installing=-
    running=-
    if try "$way" >"$work/$way.log" 2>&1; then
        result=passed
    else
        result=failed
        failed=1
        tail -n 30 "$work/$way.log" >&2
    fi
    read -r packages <"$work/ways/$way/packages" || true
    printf '%-18s %-7s %5s %5s  %s\n' "$way" "$result" "$installing" "$running" "${packages:-none}" >>"$table"
done
rm -rf --one-file-system "$work/root"

printf '%-18s %-7s %5s %5s  %s\n' way result "inst." run "packages (seconds to install them, then to run the way)"
cat "$table"
exit $failed
