# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the Debian package from the release build and has it checked; prints its path. Exit 1 at the first fault.
#   sh cmake/package.sh
# Needs appstream, desktop-file-utils, lintian, libxml2-utils and dpkg-dev.
set -eu
cd "$(dirname "$0")/.."

fail() {
    echo "package: $1" >&2
    exit 1
}
for tool in appstreamcli desktop-file-validate lintian dpkg-shlibdeps xmllint; do
    command -v "$tool" >/dev/null ||
        fail "no $tool; apt-get install appstream desktop-file-utils lintian libxml2-utils dpkg-dev"
done

desktop-file-validate resources/desktop/coilwright.desktop || fail "mend the desktop entry"
# The project has no domain to name itself by, so its identifier is not a reversed one.
appstreamcli validate --no-net --override=cid-desktopapp-is-not-rdns=info resources/desktop/coilwright.metainfo.xml || fail "mend the metainfo"
xmllint --noout resources/desktop/*.xml resources/icons/*.svg || fail "mend the XML"

sh cmake/build.sh release coilwright package_texts
out=build/release/package
rm -rf "$out"
mkdir -p "$out"
cpack --config build/release/CPackConfig.cmake -B "$out" >"$out/cpack.log" 2>&1 || {
    tail -n 20 "$out/cpack.log" >&2
    fail "the package was not made"
}
package=$(echo "$out"/coilwright_*.deb)
[ -f "$package" ] || fail "no package in $out"
lintian --allow-root --fail-on error "$package" || fail "lintian finds errors"
echo "package: $package"
