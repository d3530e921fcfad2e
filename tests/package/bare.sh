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

mkdir -p "$work/packages/partial" "$work/mounted"
rm -rf "$work/ways"
all=$(awk -v out="$work/ways" -f "$top/tests/package/ways_of_page.awk" "$top/docs/pages/embedding.md")
# shellcheck disable=SC2086  # a list of words
[ $# -gt 0 ] || set -- $all
for way; do
    if [ ! -e "$work/ways/$way/commands" ]; then
        echo "bare.sh: the page has no way '$way'; it has: $(echo "$all" | tr '\n' ' ')" >&2
        exit 1
    fi
done
git -C "$top" archive --prefix=weldloop/ -o "$work/weldloop.tar.gz" HEAD

# Lists of packages stay in it, so that a way needs no more of the mirror than its packages.
if [ ! -d "$work/base" ]; then
    mmdebstrap --variant=apt --skip=cleanup/apt "$release" "$work/base.part" "deb $mirror $release main" >&2
    # a root that is thrown away need not survive a power cut
    echo force-unsafe-io >"$work/base.part/etc/dpkg/dpkg.cfg.d/thrown_away"
    mv "$work/base.part" "$work/base"
fi

# One way: packages, files, commands, what is printed. Writes the seconds it took to install and to run to $work/took.
try() {
    way=$1
    read -r packages <"$work/ways/$way/packages" || true
    read -r prints <"$work/ways/$way/prints"

    # Namespaces of its own end with the command, and what is mounted in them too. The root is the base with what the way
    # changes on top, which is held in memory.
    unshare --mount --pid --fork --kill-child sh -eus -- "$work" "$way" "$packages" <<'INSIDE' || return 1
work=$1
way=$2
packages=$3
root=$work/mounted/root
mount -t tmpfs tmpfs "$work/mounted"
mkdir -p "$root" "$work/mounted/changed" "$work/mounted/overlay"
mount -t overlay overlay -o "lowerdir=$work/base,upperdir=$work/mounted/changed,workdir=$work/mounted/overlay" "$root"
mount -t proc proc "$root/proc"
mount --bind "$work/packages" "$root/var/cache/apt/archives"
cp --dereference --remove-destination /etc/resolv.conf "$root/etc/resolv.conf"
mkdir -p "$root/try/empty"
cp "$work/weldloop.tar.gz" "$work/ways/$way/commands" "$root/try/"
find "$work/ways/$way/files" -type f -exec cp {} "$root/try/empty/" \;
clean() {
    env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive \
        ${CMAKE_BUILD_PARALLEL_LEVEL:+CMAKE_BUILD_PARALLEL_LEVEL=$CMAKE_BUILD_PARALLEL_LEVEL} "$@" </dev/null
}
network=
began=$(date +%s)
if [ -n "$packages" ]; then
    # shellcheck disable=SC2086  # a list of words
    clean chroot "$root" apt-get install -y -qq --no-install-recommends $packages
    network="unshare --net"
fi
installed=$(date +%s)
clean $network chroot "$root" sh -ec 'cd /try/empty && sh -ex ../commands' >"$work/printed"
echo "$((installed - began)) $(($(date +%s) - installed))" >"$work/took"
INSIDE
    if ! grep -qF -e "$prints" "$work/printed"; then
        echo "it does not print '$prints' but"
        cat "$work/printed"
        return 1
    fi
}

table="$work/table"
: >"$table"
failed=0
for way; do
    echo "== $way" >&2
    echo "- -" >"$work/took"
    if try "$way" >"$work/$way.log" 2>&1; then
        result=passed
    else
        result=failed
        failed=1
        tail -n 30 "$work/$way.log" >&2
    fi
    read -r installing running <"$work/took"
    read -r packages <"$work/ways/$way/packages" || true
    printf '%-18s %-7s %5s %5s  %s\n' "$way" "$result" "$installing" "$running" "${packages:-none}" >>"$table"
done

printf '%-18s %-7s %5s %5s  %s\n' way result "inst." run "packages (seconds to install them, then to run the way)"
cat "$table"
exit $failed
