# SPDX-License-Identifier: GPL-3.0-or-later
# Installs the Debian packages that Coilwright needs and that are missing; nothing else.
#   sh cmake/install.sh        what building and running needs
#   sh cmake/install.sh check  and what the checks need
set -eu

to_build="g++ cmake make ninja-build qt6-base-dev qt6-svg-dev qt6-qpa-plugins libqcustomplot-dev libeigen3-dev
    libnlopt-dev libsqlite3-dev nlohmann-json3-dev libqrencode-dev libgtest-dev libgl-dev libopengl-dev libgl1-mesa-dri fonts-dejavu-core"
to_check="git python3 clang-format-14 clang-tidy-14 libbenchmark-dev ngspice poppler-utils qpdf zbar-tools"

fail() {
    echo "install: $1" >&2
    exit 1
}

wanted=$to_build
[ "${1:-}" = check ] && wanted="$wanted $to_check"

missing=
for package in $wanted; do
    state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$state" = installed ] || missing="$missing $package"
done
if [ -z "$missing" ]; then
    echo "install: every package needed is there"
    exit 0
fi

command -v apt-get >/dev/null || fail "this needs Debian 12; elsewhere install the like of:$missing"
as_root=
if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || fail "run as root: apt-get install --no-install-recommends$missing"
    as_root=sudo
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
run_apt() {
    if ! $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q "$@" >"$log" 2>&1; then
        tail -n 5 "$log" >&2
        fail "apt-get $1 failed, as said above; mend that and run this again"
    fi
}
echo "install: adding$missing"
run_apt update
# shellcheck disable=SC2086  # a list of names
run_apt install -y --no-install-recommends $missing
