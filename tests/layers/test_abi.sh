#!/bin/sh
# test_abi.sh BUILD [update] - what the shared library promises to programs linked before.
#
# The version script src/core/libholdwater.map names the functions of the public headers, and the
# library shows these alone; their types are those of tests/layers/libholdwater.abi, as abidw writes
# them. `update` rewrites both.
set -eu

. tests/scratch.sh
update=${2:-}
root=$(pwd)
cc=${PLAIN_CC:-gcc}
map=src/core/libholdwater.map
baseline=tests/layers/libholdwater.abi
checks=0

fail() {
    echo "test_abi: $1" >&2
    exit 1
}

# declared FOLDER: the functions of the headers there, sorted.
declared() {
    sed -n 's/^[a-z][a-z ]*[ *]\(hw_[a-z0-9_]*\)(.*/\1/p' "$1"/holdwater/*.h | LC_ALL=C sort
}

# listed MAP: the names that a version script shows.
listed() {
    sed -n 's/^ *\(hw_[a-z0-9_]*\);$/\1/p' "$1"
}

# shown LIBRARY: what it shows, with the version of each, but for the name of the version itself.
shown() {
    nm -D --defined-only "$1" | awk '$2 != "A" { print $3 }' | LC_ALL=C sort
}

# library TREE: $scratch/libholdwater.so, with what abidw reads.
library() {
    (cd "$1" && $cc -g -O0 -std=c11 -ffp-contract=off -fPIC -shared -Iinclude -Isrc \
        -Wl,-soname,libholdwater.so.0 "-Wl,--version-script=$root/$map" \
        -o "$scratch/libholdwater.so" src/core/*.c -lm)
}

types() {
    abidw --no-corpus-path --no-comp-dir-path --no-show-locs --out-file "$1" "$scratch/libholdwater.so"
}

if [ "$update" ]; then
    {
        sed '/^    global:/q' "$map"
        declared include | sed 's/.*/        &;/'
        sed -n '/^    local:/,$p' "$map"
    } >"$scratch/map"
    cp "$scratch/map" "$map"
    library .
    types "$baseline"
    echo "$map: $(listed "$map" | wc -l) names; $baseline written: review with git diff"
    exit 0
fi

# --- Names

declared include >"$scratch/declared"
listed "$map" >"$scratch/listed"
diff "$scratch/declared" "$scratch/listed" >&2 ||
    fail "$map does not list the functions of the headers: make abi-update"
[ "$(wc -l <"$scratch/declared")" -gt 100 ] || fail 'too few functions were found in the headers'
# The list of prototypes is held to the headers by the compiler.
while read -r name; do
    grep -q "[ *]$name(" tests/core/library_prototypes.h || fail "$name is not in library_prototypes.h"
    checks=$((checks + 1))
done <"$scratch/declared"

library .
shown "$scratch/libholdwater.so" >"$scratch/shown"
sed 's/$/@@HOLDWATER_0/' "$scratch/listed" | diff - "$scratch/shown" >&2 ||
    fail 'the shared library shows other names than its version script'
checks=$((checks + $(wc -l <"$scratch/shown")))

# --- Types

for tool in abidw abidiff; do
    command -v $tool >/dev/null || {
        echo "skipped: types of the shared library, as there is no $tool (abigail-tools)"
        echo "$checks checks passed"
        exit 0
    }
done
case $($cc -dumpmachine) in
x86_64-*) ;;
*)
    echo "skipped: types of the shared library, which are written down for x86_64"
    echo "$checks checks passed"
    exit 0
    ;;
esac

# same: the types of the library are those written down.
same() {
    types "$scratch/now.abi"
    abidiff "$baseline" "$scratch/now.abi" >"$scratch/said" 2>&1
}

same || {
    cat "$scratch/said" >&2
    fail "the types differ from $baseline: see \"The shared library\" in DEVELOPERS.md"
}
checks=$((checks + 1))

# The test itself: in a copy a choice gets another number and a structure another member.
mkdir "$scratch/tree"
cp -R include src "$scratch/tree"
(
    cd "$scratch/tree"
    sed 's/HW_PH_METER = 0/HW_PH_METER = 7/' "$root/include/holdwater/ph.h" >include/holdwater/ph.h
    sed 's/^    double fresh;/    double fresh, more;/' "$root/include/holdwater/ahead.h" \
        >include/holdwater/ahead.h
)
library "$scratch/tree"
! same || fail 'self-test: a changed interface was taken for the same'
for changed in "'enum hw_ph_scale'" "'struct hw_ahead_tank"; do
    grep -q "$changed" "$scratch/said" || fail "self-test: not found: $changed"
    checks=$((checks + 1))
done

echo "$checks checks passed"
