# SPDX-License-Identifier: GPL-3.0-or-later
# A design can be trusted not to start programs or reach a network because nothing in the program can: it asks the
# system for no such call, and for no such class of Qt.
#   sh tests/faults/imports.sh PROGRAM
set -eu
asked=$(nm -D --undefined-only --demangle "$1" | sed 's/^ *[Uw] //; s/@.*//')
[ "$(echo "$asked" | wc -l)" -gt 100 ] || { echo "imports: too few to be the program's: $1"; exit 1; }
if found=$(echo "$asked" | grep -E \
    '^(system|popen|fork|vfork|exec[a-z]*|posix_spawnp?|socket|connect|getaddrinfo|dlopen)$|^Q(Process|Network|Tcp|Udp|Local(Socket|Server)|Ssl|DesktopServices|Library::|PluginLoader|JSEngine)'); then
    echo "imports: a stranger's design could reach these:" "$found"
    exit 1
fi
if needed=$(readelf -d "$1" | grep -E 'NEEDED.*(Network|WebEngine|Qml|Script)'); then
    echo "imports: linked with" "$needed"
    exit 1
fi
