# Every rule of arrows.sh catches a file that breaks it, and says so; a clean file passes.
#   sh breaches.sh TREE-OF-THE-PROJECT
set -eu
arrows=$1/cmake/arrows.sh
tree=$(mktemp -d)
trap 'rm -rf "$tree"' EXIT
mkdir -p "$tree/core/coil" "$tree/core/units" "$tree/core/records" "$tree/app/cut" "$tree/tests"
licence='// SPDX-License-Identifier: GPL-3.0-or-later'
failed=0

# breach FILE LINE EXPECTED-WORDS: refused with these words.
breach() {
    printf '%s\n%s\n' "$licence" "$2" >"$tree/$1"
    if said=$(sh "$arrows" "$tree" 2>&1); then
        echo "not caught: $2 in $1"
        failed=1
    elif ! echo "$said" | grep -qF "$3"; then
        echo "caught for another reason: $2 in $1: $said"
        failed=1
    fi
    rm "$tree/$1"
}
# clean FILE LINE: allowed.
clean() {
    printf '%s\n%s\n' "$licence" "$2" >"$tree/$1"
    if ! said=$(sh "$arrows" "$tree" 2>&1); then
        echo "refused: $2 in $1: $said"
        failed=1
    fi
    rm "$tree/$1"
}

breach core/coil/a.cpp '#include "../field/leakage.h"' 'a path upwards'
breach core/coil/a.cpp '#include "coil/../../field/leakage.h"' 'a path upwards'
breach app/cut/a.cpp '# include "../../core/field/leakage.h"' 'a path upwards'
breach core/coil/a.cpp '#include <QString>' 'core knows no window'
breach core/coil/a.h '#include <QtCore/QString>' 'core knows no window'
breach core/coil/a.cpp '#include <qcustomplot.h>' 'core knows no window'
breach core/coil/a.cpp 'const double inch = 25.4;' 'only core/units converts'
breach app/cut/a.cpp 'const double inch = 0.0254;' 'only core/units converts'
breach app/cut/a.cpp 'const double dbu = 0.7746;' 'only core/units converts'
breach core/coil/a.cpp "// TO""DO later" 'finish it'
breach core/coil/a.cpp 'const double x = std::stod(text);' 'language of the desktop'
breach core/coil/a.cpp '#include <sqlite3.h>' 'only core/records knows'
breach core/coil/a.cpp '#if 0' 'compiled or deleted'
breach core/coil/a.cpp "$(yes '// a line' | head -n 500)" 'longer than 500'
clean core/units/a.cpp 'const double inch = 0.0254;'
clean core/records/a.cpp '#include <sqlite3.h>'
clean core/coil/a.cpp 'const double x = 125.4;'
clean core/coil/a.cpp '#include "coil/coil_build.h"'
clean app/cut/a.cpp '#include <QString>'

echo 'int unlicensed;' >"$tree/core/coil/a.cpp"
if sh "$arrows" "$tree" >/dev/null 2>&1; then
    echo 'not caught: a file without its licence line'
    failed=1
fi
exit $failed
