# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the pictures of the handbook anew from the release build, without a display: window, cut, winding program, every
# plot and the first pages of papers, all of the demo designs.
#   sh cmake/pictures.sh [FOLDER]   FOLDER: by default resources/handbook/pictures; if given, also at other sizes and dark
set -eu
cd "$(dirname "$0")/.."
program=build/release/app/coilwright
[ -x "$program" ] || {
    echo "pictures: no $program; run sh cmake/build.sh release coilwright first" >&2
    exit 1
}
command -v pdftoppm >/dev/null || {
    echo "pictures: no pdftoppm; run sh cmake/install.sh check first" >&2
    exit 1
}
microphone=demo-projects/microphone-input/microphone-input.coilwright
# The desk's own settings and open designs stay out of the pictures, and so does the day.
state=$(mktemp -d)
trap 'rm -rf "$state"' EXIT
mkdir -m 700 "$state/run"
export HOME="$state" XDG_RUNTIME_DIR="$state/run" XDG_DATA_HOME="$state/data" XDG_CONFIG_HOME="$state/config" \
    XDG_STATE_HOME="$state/state" XDG_CACHE_HOME="$state/cache" LC_ALL=C.UTF-8 SOURCE_DATE_EPOCH=1767225600

made=
to=${1:-resources/handbook/pictures}
mkdir -p "$to"
"$program" picture "$microphone" --to "$to/bench.png"
"$program" picture "$microphone" --to "$to/cut.png" --part cut
"$program" picture "$microphone" --to "$to/winding.png" --part winding --size 1100x700
"$program" picture "$microphone" --to "$to/spread.png" --part spread --size 1100x700

# Every plot: of the first demo design that has it.
for design in "$microphone" demo-projects/*/*.coilwright; do
    "$program" traces "$design" --to "$state/curves" --pictures >/dev/null
    for plot in "$state"/curves/*.png; do
        name=$to/plot_$(basename "$plot")
        case " $made " in
        *" $name "*) ;;
        *)
            cp "$plot" "$name"
            made="$made $name"
            ;;
        esac
    done
    rm -r "$state/curves"
done

# The first page of a paper, 90 dots an inch in grey.
page() {
    pdftoppm -r 90 -gray -f 1 -l 1 -singlefile -png "$state/paper.pdf" "$to/$1"
}
"$program" write "$microphone" --winding-sheet "$state/paper.pdf" >/dev/null
page winding_sheet
"$program" write "$microphone" --datasheet "$state/paper.pdf" >/dev/null
page datasheet

[ $# -eq 0 ] || for size in 1280x800 2560x1440; do
    "$program" picture "$microphone" --to "$to/bench_$size.png" --size "$size"
    "$program" picture "$microphone" --to "$to/bench_${size}_dark.png" --size "$size" --dark
done
