# SPDX-License-Identifier: GPL-3.0-or-later
# Alters one constant or operator of each formula in turn, builds the checks against published numbers and runs them:
# says which check died, or that the alteration SURVIVED. Works on a copy in build/mutants, never on the sources; what
# it built there is used again, so that only what changed is compiled.
#   sh tests/mutate.sh [NAME…]          a family of tests/mutants.txt (wire, lamination, …) or words of its second column
#   sh tests/mutate.sh --since COMMIT   alterations that are new, or of sources changed, since that commit
#   sh tests/mutate.sh --table          the table of tests/README.md from the last outcome of each, nothing is built
# Exit 1 if an alteration survived or could not be made.
set -eu
cd "$(dirname "$0")/.."
home=${COILWRIGHT_MUTANTS:-build/mutants}
mkdir -p "$home/tree" "$home/outcome"
home=$(cd "$home" && pwd)
tree=$home/tree build=$home/build log=$home/log
tab=$(printf '\t')
checks=$build/tests/published/published_test
trap 'exit 130' INT TERM

fail() {
    echo "mutate: $1" >&2
    exit 1
}

# The copy gets what differs from it and loses what is gone; times of equal files stay, so nothing is built in vain.
copy_sources() {
    git ls-files -co --exclude-standard | sort >"$home/wanted"
    (cd "$tree" && find . -type f | sed 's@^\./@@' | sort) >"$home/held"
    comm -13 "$home/wanted" "$home/held" | while IFS= read -r file; do rm -f "$tree/$file"; done
    while IFS= read -r file; do
        [ -f "$file" ] || continue
        cmp -s "$file" "$tree/$file" && continue
        mkdir -p "$tree/$(dirname "$file")"
        cp "$file" "$tree/$file"
    done <"$home/wanted"
}

build_unaltered() {
    echo "mutate: building the checks as they are"
    cmake -S "$tree" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_CXX_FLAGS_RELEASE=-O1 >"$log" 2>&1 &&
        cmake --build "$build" --target published_test >>"$log" 2>&1 || {
        grep -A 4 'error' "$log" | head -n 20 >&2
        fail "the unaltered checks do not build"
    }
    "$checks" --gtest_brief=1 >"$log" 2>&1 || {
        grep '^\[  FAILED' "$log" >&2
        fail "the unaltered checks do not pass"
    }
}

# What became of one alteration, in one line: "COUNT NAME NAME NAME" of the checks that died, or a word.
outcome() {
    file=$1 expression=$2
    sed "$expression" "$file" >"$tree/$file"
    if cmp -s "$file" "$tree/$file"; then
        echo "NOT ALTERED, $file has changed"
    elif ! cmake --build "$build" --target published_test >"$log" 2>&1; then
        # A compiler's refusal is no check of a number.
        echo "DOES NOT BUILD"
    elif timeout 120 "$checks" --gtest_brief=1 >"$log" 2>&1; then
        echo "SURVIVED"
    else
        # Rows of a table count each, and are named once.
        sed -n 's/^\[  FAILED  \] \([^ ,]*[.][^ ,]*\).*/\1/p' "$log" | sort -u >"$home/dead"
        names=$(sed 's@^[^/.]*/@@; s@/[^/]*$@@' "$home/dead" | sort -u | head -n 3 | tr '\n' ' ')
        echo "$(wc -l <"$home/dead") $names"
    fi
}

chosen() {
    [ ${#names} -eq 0 ] && return 0
    case $names in
    --since*)
        case $changed in *" $3 "*) return 0 ;; esac
        ! git show "${names#--since }:tests/mutants.txt" | grep -qF "$1$tab$2$tab$3$tab$4"
        return
        ;;
    esac
    printf '%s\n' "$names" | while IFS= read -r name; do
        case "$1" in "$name") exit 3 ;; esac
        case "$2" in *"$name"*) exit 3 ;; esac
    done
    [ $? -eq 3 ]
}

table() {
    echo "| family | altered | noticed by |"
    echo "|---|---|---|"
    while IFS=$tab read -r kind what file expression; do
        case $kind in '#'* | '') continue ;; esac
        said=$(cat "$home/outcome/$kind $what" 2>/dev/null || echo "not run")
        count=${said%% *}
        case $count in
        *[!0-9]* | '')
            [ "$said" = SURVIVED ] && said='**nothing**'
            echo "| $kind | $what | $said |"
            continue
            ;;
        esac
        shown=$(echo "${said#* }" | tr ' ' '\n' | sed '/^$/d' | head -n 2 | sed 's/.*/`&`/' | paste -s -d , | sed 's/,/, /')
        more=''
        [ "$(echo "${said#* }" | wc -w)" -gt 2 ] && more=', …'
        word=checks
        [ "$count" -eq 1 ] && word=check
        echo "| $kind | $what | $count $word: $shown$more |"
    done <tests/mutants.txt
}

names=''
changed=''
case ${1:-} in
--table)
    table
    exit
    ;;
--since)
    names="--since $2"
    changed=" $(git diff --name-only "$2" | tr '\n' ' ') "
    ;;
'') ;;
*) names=$(printf '%s\n' "$@") ;;
esac

copy_sources
build_unaltered
survived=0
killed=0
last=''
while IFS=$tab read -r kind what file expression; do
    case $kind in '#'* | '') continue ;; esac
    chosen "$kind" "$what" "$file" "$expression" || continue
    # The altered file is put right only when the next one differs: the next build takes both at once.
    [ -z "$last" ] || [ "$last" = "$file" ] || cp "$last" "$tree/$last"
    last=$file
    said=$(outcome "$file" "$expression")
    echo "$said" >"$home/outcome/$kind $what"
    case $said in
    [0-9]*)
        echo "$kind: $what: ${said%% *} died: ${said#* }"
        killed=$((killed + 1))
        ;;
    *)
        echo "$kind: $what: $said"
        survived=$((survived + 1))
        ;;
    esac
done <tests/mutants.txt
[ -z "$last" ] || cp "$last" "$tree/$last"
echo "mutate: $killed alterations noticed, $survived not"
[ "$survived" -eq 0 ]
