#!/bin/sh
# deb.sh BUILD - `make deb`: lintian finds no error; the packages install, run, and go without a trace. As
# root, on a Debian machine that has none of them; what is installed is purged at the end, whatever happens.
set -eu

. tests/scratch.sh
packages='holdwater libholdwater0 libholdwater-dev'
for tool in dpkg-buildpackage dh lintian; do
    command -v $tool >/dev/null || {
        echo "skipped: Debian packages, as there is no $tool (dpkg-dev, debhelper, lintian)"
        exit 0
    }
done
[ "$(id -u)" -eq 0 ] || {
    echo 'skipped: Debian packages, which root installs'
    exit 0
}
for package in $packages; do
    ! dpkg -s "$package" >/dev/null 2>&1 || {
        echo "skipped: Debian packages, as $package is installed here"
        exit 0
    }
done
# shellcheck disable=SC2086
clean() {
    dpkg --purge $packages >"$scratch/purged" 2>&1 || cat "$scratch/purged" >&2
    rm -rf "$scratch"
}
trap clean EXIT
trap 'exit 1' HUP INT TERM

fail() {
    echo "deb: $1" >&2
    exit 1
}

# The tests run in dist.sh, on the same files.
DEB_BUILD_OPTIONS=nocheck make -s BUILD="$build" deb >"$scratch/said" 2>&1 || {
    cat "$scratch/said" >&2
    exit 1
}
grep '^[EW]: ' "$scratch/said" || true
version=$(sed -n 's/^#define HW_VERSION  *"\(.*\)"/\1/p' include/holdwater/holdwater.h)
mkdir "$scratch/debs"
for package in $packages; do
    cp "$build/deb/${package}_$version"-*.deb "$scratch/debs" || fail "no package $package of version $version"
done

find /usr /etc -xdev -name '*holdwater*' 2>/dev/null | LC_ALL=C sort >"$scratch/before"
dpkg -i "$scratch"/debs/*.deb >"$scratch/installed" 2>&1 || {
    cat "$scratch/installed" >&2
    fail 'the packages do not install'
}

# Run as anybody would, from somewhere else.
cd /
program=/usr/bin/holdwater
[ "$($program --version | sed -n 1p)" = "holdwater $version" ] || fail 'the version'
ldd $program | grep -q 'libc\.so\.6 => ' || fail 'the program has a C library of its own'
answer=$($program ammonia --tan 0.6 --ph 8.2 --temp 25.5 --salinity 33 --format value --digits 3 2>/dev/null)
[ "$answer" = 0.0413 ] || fail "a question of the demo: $answer"
$program calendar --plan copper --from 2031-05-06 >"$scratch/calendar"
[ -s "$scratch/calendar" ] || fail 'the calendar'
if command -v man >/dev/null && [ -e /usr/share/man/man1/holdwater.1.gz ]; then
    man -P cat holdwater >"$scratch/man" 2>/dev/null
    grep -q 'water chemistry of quarantine fish tanks' "$scratch/man" || fail 'the manual page'
else
    # Manual pages may be left out on a small system; the package has it.
    dpkg-deb -c "$scratch"/debs/holdwater_*.deb | grep -q 'man1/holdwater\.1\.gz' || fail 'no manual page'
fi
printf '%s\n' '#include <holdwater/holdwater.h>' '#include <stdio.h>' \
    'int main(void) { return puts(hw_status_text(HW_STATUS_OK)) < 0; }' >"$scratch/try.c"
cc -o "$scratch/try" "$scratch/try.c" -lholdwater
"$scratch/try" >/dev/null
ldd "$scratch/try" | grep -q 'libholdwater\.so\.0 => /.*/libholdwater\.so\.0' || fail 'the shared library'
for package in $packages; do
    [ -z "$(dpkg --verify "$package" | grep -v '/usr/share/\(doc\|man\)/')" ] || fail "$package is not whole"
done

# shellcheck disable=SC2086
dpkg --purge $packages >"$scratch/purged" 2>&1 || fail "$(cat "$scratch/purged")"
find /usr /etc -xdev -name '*holdwater*' 2>/dev/null | LC_ALL=C sort | diff "$scratch/before" - >&2 ||
    fail 'something is left'
echo "packages of $version: installed, run, taken away"
