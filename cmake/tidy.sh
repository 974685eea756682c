# SPDX-License-Identifier: GPL-3.0-or-later
# clang-tidy on the sources changed since a commit, for at most five minutes.
#   sh cmake/tidy.sh PRESET [COMMIT]   COMMIT: by default where the branch left origin/main, else the commit before
#   sh cmake/tidy.sh PRESET all        every source, without a limit of time
set -eu
cd "$(dirname "$0")/.."
build=build/$1
since=${2:-}
limit=300
git() { command git -c safe.directory='*' "$@"; }

if [ "$since" = all ]; then
    limit=86400
    sources=$(git ls-files -- 'core/*.cpp' 'app/*.cpp')
else
    if [ -z "$since" ]; then
        since=$(git merge-base HEAD origin/main 2>/dev/null || true)
        if [ -z "$since" ] || [ "$since" = "$(git rev-parse HEAD)" ]; then
            since=$(git rev-parse -q --verify HEAD~1 || true)
        fi
    fi
    if [ -z "$since" ]; then
        echo "tidy: no earlier commit to compare with, so nothing is looked at"
        exit 0
    fi
    sources=$(git diff --name-only --diff-filter=AMR "$since" -- 'core/*.cpp' 'app/*.cpp')
fi
[ -n "$sources" ] || { echo "tidy: no source changed since $since"; exit 0; }

# Each source alone, as it is written, without headers precompiled by another compiler and warnings that clang does not
# know. Only the commands are made here; headers that the build makes lie in its own folder.
cmake --preset "$1" -B "$build/tidy" -DCMAKE_UNITY_BUILD=OFF -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON \
    -DBUILD_TESTING=OFF >"$build/tidy.log" 2>&1 || { cat "$build/tidy.log" >&2; exit 1; }
sed -i -E 's/ -Wno-[a-z-]*//g' "$build/tidy/compile_commands.json"

count=$(echo "$sources" | wc -l)
echo "tidy: $count sources, $limit s at most"
started=$(date +%s)
left=$build/tidy/left
said=$build/tidy/said
: >"$left"
: >"$said"
export build started limit left
# shellcheck disable=SC2016  # expanded by the inner shell
if ! echo "$sources" | xargs -P "$(nproc)" -n 1 sh -c '
    if [ $(($(date +%s) - started)) -ge "$limit" ]; then
        echo "$1" >>"$left"
        exit 0
    fi
    clang-tidy-14 --quiet -p "$build/tidy" "$1" 2>/dev/null
' tidy >"$said"; then
    cat "$said" >&2
    echo "tidy: mend what is said above" >&2
    exit 1
fi
if [ -s "$left" ]; then
    echo "tidy: out of time, not looked at: $(wc -l <"$left") of $count"
fi
