#!/bin/sh
# test_install.sh BUILD - `make install` puts the files there that tests/cli/installed.list names, with their
# modes, and no other; `make uninstall` takes them all away, and nothing of anybody else's.
set -eu

. tests/scratch.sh
list=tests/cli/installed.list
version=$(sed -n 's/^#define HW_VERSION  *"\(.*\)"/\1/p' include/holdwater/holdwater.h)

fail() {
    echo "test_install: $1" >&2
    exit 1
}

[ -e "$build/libholdwater.so.$version" ] || {
    echo 'skipped: the list of installed files, as this build has no shared library'
    exit 0
}

# There is a blank in DESTDIR, and somebody else's files are there before.
there="$scratch/a copy"
lib=/opt/sea/lib/multi-arch

# put TARGET: of the build that is there; nothing is compiled.
put() {
    ${MAKE:-make} -s --no-print-directory BUILD="$build" DESTDIR="$there" PREFIX=/opt/sea LIBDIR=$lib "$1"
}

# found: mode and name of every file, and of every link what it names.
found() {
    (cd "$there" && find . -type l -exec sh -c 'echo "link $1 -> $(readlink "$1")"' - {} \; \
        -o -type f -exec stat -c '%a %n' {} \;) | sed 's| \./| |' | LC_ALL=C sort -k 2
}

mkdir -p "$there/opt/sea/share/holdwater/plans" "$there/opt/sea/bin"
echo 'of the keeper' >"$there/opt/sea/share/holdwater/plans/mine.tsv"
echo 'of another' >"$there/opt/sea/bin/other"
(umask 077 && put install-files)
found >"$scratch/found"
{
    sed "s/VERSION/$version/g" $list
    echo "644 opt/sea/bin/other"
    echo "644 opt/sea/share/holdwater/plans/mine.tsv"
} | LC_ALL=C sort -k 2 | diff - "$scratch/found" >&2 || fail "what is installed is not what $list says"
checks=$(wc -l <"$scratch/found")

# Readable by all, whatever the mask; folders, too.
[ -z "$(find "$there/opt" -type d ! -perm 755)" ] || fail 'a folder is not open to all'
"$build/holdwater" --version >"$scratch/want"
program=$build/holdwater
[ ! -e "$program.bin" ] || program=$program.bin # what an emulator runs
cmp "$there/opt/sea/bin/holdwater" "$program"
grep -qx "Version: $version" "$there$lib/pkgconfig/holdwater.pc" || fail 'the version of pkg-config'
grep -q " $version\$" "$scratch/want" || fail "the program's version is not $version"

# A second time over the first; then away, but for what was there before.
put install-files
found | cmp - "$scratch/found"
put uninstall >"$scratch/said"
printf '%s\n' '644 opt/sea/bin/other' '644 opt/sea/share/holdwater/plans/mine.tsv' >"$scratch/want"
found | diff "$scratch/want" - >&2 || fail 'uninstall left files, or took too many'
grep -q 'left, as there are other files in it: .*/plans$' "$scratch/said" || fail 'what is left is not told'
rm "$there/opt/sea/share/holdwater/plans/mine.tsv"
put uninstall >"$scratch/said"
[ ! -s "$scratch/said" ] || fail 'the second uninstall had something to say'
[ -z "$(find "$there" -name '*holdwater*')" ] || fail 'a folder is left'
echo "$((checks + 9)) checks passed"
