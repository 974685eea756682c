# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the pictures of the handbook anew from the release build: the window with the demo design, without a display.
#   sh cmake/pictures.sh [FOLDER]   FOLDER: by default resources/handbook/pictures; also at other sizes and dark if given
set -eu
cd "$(dirname "$0")/.."
program=build/release/app/coilwright
[ -x "$program" ] || {
    echo "pictures: no $program; run sh cmake/build.sh release coilwright first" >&2
    exit 1
}
design=
for candidate in demo-projects/*/*.coilwright demo-projects/*mic*/*.coilwright; do
    [ -f "$candidate" ] && design=$candidate
done
[ -n "$design" ] || {
    echo "pictures: no demo design in demo-projects" >&2
    exit 1
}
# The desk's own settings and open designs stay out of the picture.
state=$(mktemp -d)
trap 'rm -rf "$state"' EXIT
mkdir -m 700 "$state/run"
export HOME="$state" XDG_RUNTIME_DIR="$state/run" XDG_DATA_HOME="$state/data" XDG_CONFIG_HOME="$state/config" \
    XDG_STATE_HOME="$state/state" XDG_CACHE_HOME="$state/cache" LC_ALL=C.UTF-8

if [ $# -eq 0 ]; then
    mkdir -p resources/handbook/pictures
    "$program" picture "$design" --to resources/handbook/pictures/bench.png
    exit
fi
mkdir -p "$1"
for size in 1280x800 2560x1440; do
    "$program" picture "$design" --to "$1/bench_$size.png" --size "$size"
    "$program" picture "$design" --to "$1/bench_${size}_dark.png" --size "$size" --dark
done
