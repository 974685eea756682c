# SPDX-License-Identifier: GPL-3.0-or-later
# Builds the fuzzers and lets each run for some seconds (60 if not told) from its corpus. Says how often each was run,
# and keeps in build/fuzz/finds what crashed, took more than a second of the processor (20 s of the clock) or swelled
# (1 GB); exit 1 if anything did.
#   sh cmake/fuzz.sh [SECONDS [READER…]]
set -eu
cd "$(dirname "$0")/.."
seconds=${1:-60}
[ $# -eq 0 ] || shift
longest=16384 # bytes of an input

for package in clang-14 libclang-rt-14-dev; do
    state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$state" = installed ] || {
        echo "fuzz: this needs the packages clang-14 and libclang-rt-14-dev" >&2
        exit 1
    }
done
sh cmake/build.sh fuzz fuzzers

build=build/fuzz
mkdir -p $build/finds $build/grown
# The keys of a file's schema are its words.
for kind in design catalog winder; do
    grep -oE '"[a-z_]+": ' resources/schema/$kind.schema.json | sort -u | sed 's/"/\\"/g; s/.*/"&"/' >$build/$kind.dict
done

# Stacks of allocations cost a third of the time; a find run again without this has them.
export ASAN_OPTIONS=malloc_context_size=1
found=0
for source in tests/fuzz/*_fuzzer.cpp; do
    reader=$(basename "$source" _fuzzer.cpp)
    [ $# -eq 0 ] || case " $* " in *" $reader "*) ;; *) continue ;; esac
    mkdir -p "$build/grown/$reader"
    words=
    [ ! -f "$build/$reader.dict" ] || words="-dict=$build/$reader.dict"
    # shellcheck disable=SC2086  # one option or none
    if "$build/tests/fuzz/${reader}_fuzzer" $words -max_total_time="$seconds" -max_len=$longest -timeout=20 \
        -rss_limit_mb=1024 -print_final_stats=1 -artifact_prefix="$build/finds/$reader-" \
        "$build/grown/$reader" "tests/fuzz/corpus/$reader" >"$build/$reader.log" 2>&1; then
        end="nothing found"
    else
        end="A FIND, see $build/$reader.log and $build/finds"
        found=1
    fi
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$build/$reader.log")
    speed=$(sed -n 's/^stat::average_exec_per_sec: *//p' "$build/$reader.log")
    peak=$(sed -n 's/^stat::peak_rss_mb: *//p' "$build/$reader.log")
    echo "fuzz: $reader: $runs runs, $speed a second, $peak MB at most: $end"
done
exit $found
