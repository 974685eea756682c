# SPDX-License-Identifier: GPL-3.0-or-later
# Tries the package on a bare Debian 12: installs it with what it needs, uses it without a screen, removes it, and says
# what is left. Works in a copy of ROOT, which is not touched; mounts end with the script. Needs root and the network.
#   debootstrap --variant=minbase bookworm ROOT
#   sh cmake/try_package.sh build/release/package/coilwright_0.1.0_amd64.deb ROOT
set -eu
package=$(realpath "$1")
bare=$(realpath "$2")
work=$(mktemp -d /var/tmp/coilwright-root.XXXXXX)
cleaned() {
    # A root with something mounted in it is left alone.
    if ! grep -q " $work" /proc/self/mounts; then rm -rf --one-file-system "$work"; fi
}
trap cleaned EXIT
cp -a --one-file-system "$bare/." "$work"
cp -L /etc/resolv.conf "$work/etc/resolv.conf"
cp "$package" "$work/tmp/given.deb"
cat >"$work/tmp/trial.sh" <<'TRIAL'
set -eu
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 HOME=/tmp/home XDG_RUNTIME_DIR=/tmp/run
mkdir -p -m 700 "$HOME" "$XDG_RUNTIME_DIR"
dpkg-query -W -f '${Package}\n' | sort >/tmp/before
started=$(date +%s)
apt-get -q update >/tmp/log 2>&1 && apt-get -q install -y --no-install-recommends /tmp/given.deb >>/tmp/log 2>&1 || {
    tail -n 20 /tmp/log
    exit 1
}
echo "trial: installed in $(($(date +%s) - started)) s, $(($(dpkg-query -W | wc -l) - $(wc -l </tmp/before))) packages"
coilwright --version
demo=/usr/share/coilwright/demo-projects/microphone-input/microphone-input.coilwright
coilwright figures "$demo" >/tmp/figures
echo "trial: $(wc -l </tmp/figures) lines of figures"
for run in 1 2 3; do
    from=$(date +%s%N)
    coilwright picture "$demo" --to /tmp/bench.png
    echo "trial: picture $run in $((($(date +%s%N) - from) / 1000000)) ms"
done
[ -s /tmp/bench.png ]
apt-get -q purge -y --autoremove coilwright >/tmp/log 2>&1 || {
    tail -n 20 /tmp/log
    exit 1
}
dpkg-query -W -f '${Package}\n' | sort >/tmp/after
left=$(comm -13 /tmp/before /tmp/after)
[ -z "$left" ] || { echo "trial: packages left:" $left; exit 1; }
# What apt and dpkg write down of their own doings is theirs; what the program remembers in a home is the user's.
found=$(find / -xdev \( -path /proc -o -path "$HOME" \) -prune -o -iname '*coilwright*' -print
    grep -rIl coilwright /etc /usr /opt /root /var/lib/dpkg/info /var/cache 2>/dev/null || true)
[ -z "$found" ] || { echo "trial: left behind:" $found; exit 1; }
echo "trial: nothing is left; in the home of who used it:" $(find "$HOME" -type f)
TRIAL
unshare -m sh -c 'mount --make-rprivate / && mount -t proc proc "$0/proc" && mount -t tmpfs tmpfs "$0/dev/shm" 2>/dev/null
    [ -c "$0/dev/null" ] || mount --bind /dev "$0/dev"
    exec chroot "$0" sh /tmp/trial.sh' "$work"
