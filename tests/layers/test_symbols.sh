#!/bin/sh
# test_symbols.sh BUILD - what the objects of the core need and show.
#
# Compiled plainly, they need libm and mem* alone, hold no data that can change, and every name they
# show begins with hw_.
set -eu

. tests/scratch.sh
root=$(pwd)
cc=${PLAIN_CC:-gcc}
nm=${NM:-nm}

allowed='memcpy memmove memset memcmp _GLOBAL_OFFSET_TABLE_
    acos asin atan atan2 cbrt ceil copysign cos cosh erf exp exp2 expm1 fabs floor fma fmax fmin
    fmod frexp hypot ldexp log log10 log1p log2 lrint lround modf nearbyint pow rint round scalbn
    sin sinh sqrt tan tanh trunc'

# compile NAME FILE: $scratch/NAME.o
compile() {
    $cc -O2 -std=c11 -ffp-contract=off -I"$root/include" -I"$root/src" -c -o "$scratch/$1.o" "$2"
}

# faults OBJECT...: every fault, one per line; the last line counts the symbols.
faults() {
    for object in "$@"; do
        LC_ALL=C $nm -P "$object" | sed "s|^|$(basename "$object" .o).c |"
    done | LC_ALL=C awk -v allowed="$allowed" '
        BEGIN {
            n = split(allowed, names)
            for (i = 1; i <= n; i++)
                is_allowed[names[i]] = 1
        }
        { symbols++ }
        $3 == "U" && !($2 in is_allowed) && $2 !~ /^hw_/ { print $1 ": needs " $2 }
        $3 ~ /^[DdBbCGgSs]$/ { print $1 ": holds data that can change: " $2 }
        $3 ~ /^[A-TV-Z]$/ && $2 !~ /^hw_/ {
            print $1 ": shows " $2 ", which does not begin with hw_"
        }
        END { print symbols + 0 " symbols" }'
}

fail() {
    echo "test_symbols: $1" >&2
    exit 1
}

checks=0

# finds LINE WHY: an object made of that line has that one fault; an empty WHY: none.
finds() {
    printf '%s\n' "$1" >"$scratch/planted.c"
    compile planted "$scratch/planted.c"
    faults "$scratch/planted.o" >"$scratch/found"
    want=1
    test -z "$2" || want=2
    test "$(wc -l <"$scratch/found")" -eq $want ||
        fail "self-test, wanted: $2, for: $1, got: $(cat "$scratch/found")"
    grep -qF -- "$2" "$scratch/found" || fail "self-test, wanted: $2, got: $(cat "$scratch/found")"
    rm "$scratch/planted.o"
    checks=$((checks + 1))
}

finds 'double pow(double, double); double hw_f(double x) { return pow(x, 2.5); }' ''
finds 'double hw_g(double); double hw_f(double x) { return hw_g(x); }' ''
finds 'static const double t[] = {1, 2}; double hw_f(int i) { return t[i]; }' ''
finds 'extern const double hw_t[]; const double hw_t[] = {1, 2};' ''
finds 'int puts(const char *); int hw_f(void) { return puts("x"); }' 'needs puts'
finds 'void *malloc(unsigned long); void *hw_f(void) { return malloc(8); }' 'needs malloc'
finds '#include <errno.h>
int hw_f(void) { return errno; }' 'needs __errno_location'
finds 'int hw_count = 3;' 'holds data that can change: hw_count'
finds 'int hw_count;' 'holds data that can change: hw_count'
finds 'int hw_f(void) { static int n; return ++n; }' 'holds data that can change: n'
finds 'double fraction(double x) { return x; }' 'shows fraction'

set -- src/core/*.c
if [ -e "$1" ]; then
    for file in "$@"; do
        compile "$(basename "$file" .c)" "$file"
    done
    faults "$scratch"/*.o >"$scratch/found"
    if [ "$(wc -l <"$scratch/found")" -ne 1 ]; then
        sed '$d' "$scratch/found" >&2
        exit 1
    fi
    checks=$((checks + $(sed 's/ symbols//' "$scratch/found")))
fi
echo "$checks checks passed"
