# What a fresh Debian machine needs, by purpose. To be sourced by the scripts: install_missing build test
# shellcheck shell=sh

packages_for() {
    case "$1" in
        build) echo g++ cmake ninja-build libboost-dev ;;
        io) echo libtomlplusplus-dev nlohmann-json3-dev ;;
        test) echo libgtest-dev libgmock-dev pkg-config meson python3-jsonschema ;;
        libcxx) echo clang libc++-dev libc++abi-dev googletest ;;
        bench) echo libbenchmark-dev valgrind ;;
        clang) echo clang ;;
        fuzz) echo clang libclang-rt-dev ;;
        coverage) echo clang llvm libclang-rt-dev ;;
        style) echo clang-format ;;
        lint) echo clang-tidy ;;
        browser) echo emscripten ;;
        browser-test) echo chromium ;;
        docs) echo doxygen libjs-mathjax fonts-mathjax ;;
        bare) echo mmdebstrap git ;;
        spread) echo libtbb-dev libopenmpi-dev openmpi-bin ;;
        oracle) echo gmsh getdp ngspice python3-numpy python3-scipy python3-mpmath ;;
        *) echo "packages.sh: no such purpose: $1" >&2 && return 1 ;;
    esac
}

# Installs what the named purposes need and the machine lacks. Asks the network only then.
install_missing() {
    if ! command -v dpkg-query >/dev/null; then
        echo "Not a Debian machine: install the counterparts of these yourself, if they are missing:" >&2
        for purpose in "$@"; do packages_for "$purpose" >&2; done
        return 0
    fi
    missing=
    for purpose in "$@"; do
        wanted=$(packages_for "$purpose") || return 1
        for package in $wanted; do
            status=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) || status=absent
            [ "$status" = installed ] || missing="$missing $package"
        done
    done
    [ -n "$missing" ] || return 0

    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        if ! command -v sudo >/dev/null; then
            echo "Missing packages, and neither root nor sudo to install them:$missing" >&2
            return 1
        fi
        as_root=sudo
    fi
    echo "Installing:$missing" >&2
    # shellcheck disable=SC2086  # a list of words
    {
        $as_root apt-get update -qq &&
            $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing
    } >&2 </dev/null
}
