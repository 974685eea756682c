# SPDX-License-Identifier: GPL-3.0-or-later
# From nothing to a demo design on the screen: installs what is missing, builds a release, opens the design.
# Without a display: prints the design's figures and writes its curves, and a picture of each plot, into an out folder.
#   sh cmake/start.sh [DESIGN]
set -eu
# A design named on the command line is meant from where the caller stands.
design=
[ $# -gt 0 ] && design=$(realpath -m -- "$1")
cd "$(dirname "$0")/.."

sh cmake/install.sh
sh cmake/build.sh release coilwright

program=build/release/app/coilwright
out=build/release/out
if [ -z "$design" ]; then
    for candidate in demo-projects/*/*.coilwright demo-projects/*mic*/*.coilwright; do
        [ -f "$candidate" ] && design=$candidate
    done
fi
if [ ! -f "$design" ]; then
    echo "start: no design to open${design:+ at $design}" >&2
    exit 1
fi

# Qt warns about a missing or shared one; containers have none.
if [ -z "${XDG_RUNTIME_DIR:-}" ] || [ ! -d "$XDG_RUNTIME_DIR" ]; then
    XDG_RUNTIME_DIR=$(mktemp -d)
    export XDG_RUNTIME_DIR
    trap 'rm -rf "$XDG_RUNTIME_DIR"' EXIT
fi

# A display may be named and dead; then the program says so in one sentence, and the rest is done without it.
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    echo "start: opening $design; closing the window ends this"
    if said=$("$program" "$design" 2>&1); then
        exit 0
    fi
    case $said in
    display:*) ;;
    *)
        echo "$said" >&2
        exit 2
        ;;
    esac
fi

echo "start: no display here, so these are the figures of $design"
"$program" figures "$design"
echo "start: writing its curves as tables, and a picture of each plot, into $out"
"$program" traces "$design" --to "$out" --pictures
