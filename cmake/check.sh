# SPDX-License-Identifier: GPL-3.0-or-later
# Every check, on a bare Debian 12 or a desk that has it all: installs what is missing, then format, arrows, build,
# clang-tidy on the files changed, and every test. Ends in ctest's summary; exit 0 only if all of it passed.
#   sh cmake/check.sh
set -eu
cd "$(dirname "$0")/.."

fail() {
    echo "check: $1" >&2
    exit 1
}

sh cmake/install.sh check

echo "check: format of every source"
# The container that checks may belong to another user than the files.
sources=$(git -c safe.directory='*' ls-files -- '*.cpp' '*.h')
# shellcheck disable=SC2086  # a list of files without blanks
clang-format-14 --dry-run -Werror $sources || fail "clang-format-14 -i mends the files named above"

echo "check: arrows between rooms, and what is not written here"
sh cmake/arrows.sh || fail "mend the lines named above"

sh cmake/build.sh release

sh cmake/tidy.sh release

# Windows are tested without a screen, and nothing of the desk's own state is read or written.
state=$(mktemp -d)
trap 'rm -rf "$state"' EXIT
mkdir -m 700 "$state/run"
export QT_QPA_PLATFORM=offscreen XDG_RUNTIME_DIR="$state/run" XDG_DATA_HOME="$state/data" \
    XDG_CONFIG_HOME="$state/config" XDG_STATE_HOME="$state/state" XDG_CACHE_HOME="$state/cache" LC_ALL=C.UTF-8

echo "check: every test"
ctest --preset release -j "$(nproc)" --no-label-summary >"$state/tests.log" 2>&1 || {
    sed -n '/\*\*\*/,$p' "$state/tests.log"
    exit 1
}
tail -n 5 "$state/tests.log"
