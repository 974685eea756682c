# SPDX-License-Identifier: GPL-3.0-or-later
# Alters one constant or operator of each formula in turn, builds the checks against published numbers and runs them:
# says which check died, or that the alteration SURVIVED. Works on a copy in a temporary folder, never here.
#   sh tests/mutate.sh [FAMILY…]   as in tests/mutants.txt: wire, lamination, permeability, …
# Exit 1 if an alteration survived or could not be made.
set -eu
cd "$(dirname "$0")/.."
families=$*
copy=$(mktemp -d "${TMPDIR:-/tmp}/coilwright-mutants-XXXXXX")
trap 'rm -rf "$copy"' EXIT
trap 'exit 130' INT TERM

fail() {
    echo "mutate: $1" >&2
    exit 1
}
list=$copy/list
git ls-files -co --exclude-standard >"$list"
mkdir "$copy/tree"
while IFS= read -r file; do
    [ -f "$file" ] && echo "$file"
done <"$list" | tar -cf - -T - | tar -xf - -C "$copy/tree"
tree=$copy/tree
build=$copy/build

echo "mutate: building the checks as they are"
cmake -S "$tree" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release >"$copy/log" 2>&1 &&
    cmake --build "$build" --target published_test >>"$copy/log" 2>&1 || {
    grep -A 4 'error' "$copy/log" | head -n 20 >&2
    fail "the unaltered checks do not build"
}
checks=$build/tests/published/published_test
"$checks" --gtest_brief=1 >"$copy/log" 2>&1 || {
    grep '^\[  FAILED' "$copy/log" >&2
    fail "the unaltered checks do not pass"
}

tab=$(printf '\t')
survived=0
killed=0
while IFS=$tab read -r kind what file expression; do
    case $kind in '#'* | '') continue ;; esac
    case " ${families:-$kind} " in *" $kind "*) ;; *) continue ;; esac
    cp "$tree/$file" "$copy/original"
    sed "$expression" "$copy/original" >"$tree/$file"
    if cmp -s "$copy/original" "$tree/$file"; then
        echo "$kind: $what: NOT ALTERED, $file has changed"
        survived=$((survived + 1))
        continue
    fi
    if ! cmake --build "$build" --target published_test >"$copy/log" 2>&1; then
        # A compiler's refusal is no check of a number.
        echo "$kind: $what: DOES NOT BUILD"
        survived=$((survived + 1))
    elif timeout 120 "$checks" --gtest_brief=1 >"$copy/log" 2>&1; then
        echo "$kind: $what: SURVIVED"
        survived=$((survived + 1))
    else
        # Rows of a table count each, and are named once.
        sed -n 's/^\[  FAILED  \] \([^ ,]*[.][^ ,]*\).*/\1/p' "$copy/log" | sort -u >"$copy/dead"
        names=$(sed 's@^[^/.]*/@@; s@/[^/]*$@@' "$copy/dead" | sort -u | head -n 3 | tr '\n' ' ')
        echo "$kind: $what: $(wc -l <"$copy/dead") died: $names"
        killed=$((killed + 1))
    fi
    cp "$copy/original" "$tree/$file"
done <tests/mutants.txt
echo "mutate: $killed alterations noticed, $survived not"
[ "$survived" -eq 0 ]
