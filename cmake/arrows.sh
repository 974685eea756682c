# SPDX-License-Identifier: GPL-3.0-or-later
# What the compiler cannot see of the arrows between rooms, and of our own habits. Prints each breach; exit 1 if any.
#   sh cmake/arrows.sh [TREE]
set -eu
cd "${1:-$(dirname "$0")/..}"
breaches=0

# forbid WHY PATTERN FOLDER…: no source line there may match.
forbid() {
    why=$1 pattern=$2
    shift 2
    if found=$(grep -rnE --include='*.h' --include='*.cpp' -e "$pattern" "$@" 2>/dev/null); then
        echo "$found" | sed "s|^|arrows: $why: |"
        breaches=1
    fi
}

outside_units=
for room in core/*/; do
    [ "$room" = core/units/ ] || outside_units="$outside_units $room"
done

forbid 'a path upwards reaches past the include roots' '#[[:space:]]*include[[:space:]]*["<]([^">]*/)?\.\./' core app tests
forbid 'core knows no window' '#[[:space:]]*include[[:space:]]*["<](Q[A-Z][A-Za-z]*|Qt[A-Z][A-Za-z]*/[^">]*|qcustomplot\.h)[">]' core
forbid 'core links no window' 'Qt(5|6)?::|QT_' core
# shellcheck disable=SC2086  # a list of folders
forbid 'only core/units converts units' '(^|[^0-9.])(25\.4|0\.0254|0\.7746)([^0-9]|$)|25\.4e-3|2\.54e-2' $outside_units app
forbid 'finish it or leave it out' '\b(TODO|FIXME|XXX|HACK|for now|not implemented)\b' core app tests
forbid 'numbers must not follow the language of the desktop' '(^|[^a-zA-Z_])(std::)?(stod|stof|strtod|strtof|atof|setlocale)[[:space:]]*\(' core app
outside_records=
for room in core/*/; do
    [ "$room" = core/records/ ] || outside_records="$outside_records $room"
done
# shellcheck disable=SC2086  # a list of folders
forbid 'only core/records knows the database' '#[[:space:]]*include[[:space:]]*[<"]sqlite3' $outside_records app
forbid 'compiled or deleted, nothing between' '#[[:space:]]*if[[:space:]]+0' core app tests

for file in $(find core app tests -name '*.h' -o -name '*.cpp' | sort); do
    lines=$(wc -l <"$file")
    [ "$lines" -le 500 ] || { echo "arrows: longer than 500 lines: $file ($lines)"; breaches=1; }
    read -r first <"$file" || true
    [ "$first" = '// SPDX-License-Identifier: GPL-3.0-or-later' ] || {
        echo "arrows: the first line names no licence: $file"
        breaches=1
    }
done
exit $breaches
