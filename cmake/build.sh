# SPDX-License-Identifier: GPL-3.0-or-later
# Configures and builds a preset; says one line a step, and the compiler's words only if it fails.
#   sh cmake/build.sh PRESET [TARGET…]
set -eu
cd "$(dirname "$0")/.."
preset=$1
shift
folder=build/$preset
mkdir -p "$folder"

step() {
    echo "build: $1, into $folder"
    shift
    if ! "$@" >"$folder/build.log" 2>&1; then
        grep -E -A 6 'error:|FAILED|CMake Error' "$folder/build.log" | head -n 40 >&2 || true
        echo "build: stopped; all of it is in $folder/build.log" >&2
        exit 1
    fi
}
step "configuring $preset" cmake --preset "$preset"
if [ $# -gt 0 ]; then
    step "compiling $*" cmake --build --preset "$preset" --target "$@"
else
    step "compiling everything (some minutes the first time)" cmake --build --preset "$preset"
fi
