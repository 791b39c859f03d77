#!/bin/sh
# dist.sh BUILD - `make dist` makes the same bytes twice, whatever mask, time zone and folder; unpacked it
# makes them once more, without git; and what is unpacked builds and passes its tests.
set -eu

. tests/scratch.sh
name=holdwater-$(sed -n 's/^#define HW_VERSION  *"\(.*\)"/\1/p' include/holdwater/holdwater.h)

fail() {
    echo "dist: $1" >&2
    exit 1
}

make -s BUILD="$scratch/one" dist >/dev/null
first=$scratch/one/$name.tar.gz
(umask 077 && TZ=Pacific/Auckland make -s BUILD="$scratch/two" dist >/dev/null)
cmp "$first" "$scratch/two/$name.tar.gz"

# Nobody's name and nothing that was built; modes that any mask leaves.
tar -tvzf "$first" >"$scratch/list"
[ "$(wc -l <"$scratch/list")" -gt 500 ] || fail 'too few files'
! grep -vE '^-rw(-r--r--|xr-xr-x) 0/0 ' "$scratch/list" || fail 'an owner or a mode'
! grep -E "$name/(build|\.git)/" "$scratch/list" || fail 'more than the source'

mkdir "$scratch/tree"
tar -xzf "$first" -C "$scratch/tree"
if [ -e .git ]; then
    git ls-files -c | grep -vxF MANIFEST | LC_ALL=C sort | while read -r file; do
        cmp "$file" "$scratch/tree/$name/$file"
    done
fi
(cd "$scratch/tree/$name" && make -s BUILD="$scratch/three" dist >/dev/null)
cmp "$first" "$scratch/three/$name.tar.gz"

(cd "$scratch/tree/$name" && make -j2 --no-print-directory -k test) >"$scratch/said" 2>&1 || {
    cat "$scratch/said" >&2
    fail 'what was unpacked does not pass its tests'
}
tail -n 2 "$scratch/said"
sed -n '/^skipped/p' "$scratch/said"
