#!/bin/sh
# test_library_docs.sh BUILD - what docs/library.md shows works with an installed copy: each block of C or
# Python is saved under the name that the text before it tells, each block of sh is run, and prints what the
# next block of text says.
set -eu

. tests/scratch.sh
root=$(pwd)
cc=${LIBRARY_CC:-cc}
checks=0

fail() {
    echo "test_library_docs: $1" >&2
    exit 1
}
skip() {
    echo "skipped: $1"
}

version=$(sed -n 's/^#define HW_VERSION  *"\(.*\)"/\1/p' include/holdwater/holdwater.h)
shared=$build/libholdwater.so.$version
if [ ! -e "$shared" ] || [ "${LIBRARY_RUN:-}" ]; then
    skip 'examples of the library, as this build has no shared one or runs under an emulator'
    exit 0
fi
command -v pkg-config >/dev/null || {
    skip 'examples of the library, as there is no pkg-config'
    exit 0
}

# Blocks, numbered in one row: BLOCK.sh and BLOCK.text, and the files named in the text.
mkdir "$scratch/blocks" "$scratch/bin" "$scratch/examples"
awk -v to="$scratch" '
    !inside && /^Save as `|Save as `/ { split($0, part, "Save as `"); sub(/`.*/, "", part[2]); name = part[2] }
    /^```/ && inside { inside = 0; close(file); next }
    /^```(c|python)$/ { inside = 1; file = to "/examples/" name; name = ""; next }
    /^```(sh|text)$/ { inside = 1; file = sprintf("%s/blocks/%02d.%s", to, ++n, substr($0, 4)); next }
    /^```/ { inside = 1; file = "/dev/null"; next }
    inside { print >file }' docs/library.md
for file in birch.c birch.py; do
    [ -s "$scratch/examples/$file" ] || fail "docs/library.md has no $file"
done

${MAKE:-make} -s --no-print-directory BUILD="$build" DESTDIR= PREFIX="$scratch/prefix" \
    LIBDIR="$scratch/prefix/lib/multi-arch" install-files
lib=$scratch/prefix/lib/multi-arch
# The compiler of this build, under the name that the examples use.
printf '#!/bin/sh\nPATH=%s\nexec %s "$@"\n' "$PATH" "$cc" >"$scratch/bin/cc"
chmod +x "$scratch/bin/cc"
PATH=$scratch/bin:$scratch/prefix/bin:$PATH
PKG_CONFIG_PATH=$lib/pkgconfig
LD_LIBRARY_PATH=$lib
export PATH PKG_CONFIG_PATH LD_LIBRARY_PATH

# left_out BLOCK: what it needs is not here; it is named.
left_out() {
    case $(cat "$1") in
    *python3*)
        # A Python of another kind than CC makes cannot load it.
        if ! python3 -c 'import ctypes; ctypes.CDLL("libholdwater.so.0")' 2>"$scratch/said"; then
            case $cc in
            cc | gcc | clang) command -v python3 >/dev/null && fail "$(cat "$scratch/said")" ;;
            esac
            skip 'the library from Python, as there is none that loads it'
            return 0
        fi
        ;;
    *-static*)
        echo 'int main(void) { return 0; }' >"$scratch/try.c"
        if ! cc -static -o "$scratch/try" "$scratch/try.c" 2>"$scratch/said"; then
            skip 'the library in a static program, as the C library is not there for it'
            return 0
        fi
        ;;
    esac
    return 1
}

cd "$scratch/examples"
for block in "$scratch"/blocks/*.sh; do
    number=$(basename "$block" .sh)
    want=$scratch/blocks/$(printf '%02d' $((${number#0} + 1))).text
    [ -e "$want" ] || fail "block $number of sh has no text after it that says what it prints"
    ! left_out "$block" || continue
    rm -f birch
    sh -eu "$block" >"$scratch/got" 2>&1 || fail "status $?: $(cat "$block" "$scratch/got")"
    diff "$want" "$scratch/got" >&2 || fail "block $number prints something else: $(cat "$block")"
    checks=$((checks + 1))
done
[ "$checks" -ge 3 ] || fail "only $checks blocks were run"

# The way without installing; the shared program finds its library by the soname alone.
cc -std=c11 -I"$root/include" birch.c "$build/libholdwater.a" -lm -o birch
./birch | cmp - "$scratch/blocks/02.text"
# shellcheck disable=SC2046
cc -std=c11 birch.c $(pkg-config --cflags --libs holdwater) -o birch
rm "$lib/libholdwater.so"
./birch | cmp - "$scratch/blocks/02.text"
rm "$lib/libholdwater.so.0"
! ./birch 2>/dev/null || fail 'the program does not need the shared library'

# What the library shows is what its version script lists.
nm -D --defined-only "$shared" | awk '$2 != "A" { sub(/@.*/, "", $3); print $3 }' |
    LC_ALL=C sort >"$scratch/shown"
sed -n 's/^ *\(hw_[a-z0-9_]*\);$/\1/p' "$root/src/core/libholdwater.map" | diff - "$scratch/shown" >&2 ||
    fail 'the shared library shows other names than its version script'
[ "$(pkg-config --modversion holdwater)" = "$(holdwater --version | sed -n '1s/holdwater //p')" ] ||
    fail 'pkg-config tells another version than the program'
echo "$((checks + 5)) checks passed"
