#!/bin/sh
# test_rings.sh BUILD - within a folder of src files depend on one another one way: the #include lines
# of NAME.c and NAME.h together lead from NAME to others, and never back to it.
set -eu

. tests/scratch.sh
root=$(pwd)

# Every file name that lies on a ring of its folder, with what it leads to there, one per line; the
# last line counts the arrows. Names that lead nowhere are taken away, again and again; then those
# that nothing leads to: what stays lies on a ring, or between two.
rings() {
    # shellcheck disable=SC2046
    LC_ALL=C awk '
        FNR == 1 {
            n = split(FILENAME, part, "/")
            folder = part[n - 1]
            name = part[n]
            sub(/[.][ch]$/, "", name)
            from = folder "/" name
        }
        /^[ \t]*#[ \t]*include[ \t]*"/ {
            split($0, quoted, "\"")
            to = quoted[2]
            sub(/[.][ch]$/, "", to)
            if (index(to, "/") == 0)
                to = folder "/" to
            if (to != from && index(to, folder "/") == 1 && !((from, to) in arrow)) {
                arrow[from, to] = 1
                arrows++
            }
        }
        END {
            do {
                gone = 0
                split("", leads)
                split("", led)
                for (a in arrow) {
                    split(a, end, SUBSEP)
                    leads[end[1]] = 1
                    led[end[2]] = 1
                }
                for (a in arrow) {
                    split(a, end, SUBSEP)
                    if (!(end[2] in leads) || !(end[1] in led)) {
                        delete arrow[a]
                        gone++
                    }
                }
            } while (gone > 0)
            for (a in arrow) {
                split(a, end, SUBSEP)
                print "a ring: " end[1] " -> " end[2]
            }
            print arrows + 0 " arrows"
        }
    ' $(find src -name '*.[ch]' | LC_ALL=C sort) /dev/null
}

fail() {
    echo "test_rings: $1" >&2
    exit 1
}

# --- The test itself, on a small tree and on a copy of the real one

checks=0

# wants N: the tree of the current folder has N arrows that lie on rings.
wants() {
    rings >"$scratch/found"
    test $(($(wc -l <"$scratch/found") - 1)) -eq "$1" ||
        fail "self-test, $1 arrows on rings wanted: $(cat "$scratch/found")"
    checks=$((checks + 1))
}

mkdir -p "$scratch/tree/src/cli" "$scratch/tree/src/core"
cd "$scratch/tree"
printf '#include "cli/a.h"\n#include "cli/b.h"\n' >src/cli/a.c
printf '#include "cli/c.h"\n' >src/cli/b.h
printf '#include <stdio.h>\n#include "core/a.h"\n' >src/cli/c.c
: >src/cli/a.h
printf '#include "b.h"\n' >src/core/a.h
wants 0
printf '#include "cli/a.h"\n' >src/cli/c.h
wants 3
grep -qx 'a ring: cli/c -> cli/a' "$scratch/found" || fail "the ring is not named"
: >src/cli/c.h
printf '  #  include "a.h"\n' >src/core/b.c
wants 2
rm src/core/b.c
wants 0

rm -rf "$scratch/tree/src"
cp -R "$root/src" "$scratch/tree/src"
wants 0
printf '#include "cli/reply.h"\n' >>src/cli/wording.c
rings >"$scratch/found"
grep -q '^a ring: cli/wording -> cli/reply$' "$scratch/found" || fail "a ring in a copy was not found"
checks=$((checks + 1))

# --- The tree

cd "$root"
rings >"$scratch/found"
if [ "$(wc -l <"$scratch/found")" -ne 1 ]; then
    sed '$d' "$scratch/found" >&2
    exit 1
fi
arrows=$(sed 's/ arrows//' "$scratch/found")
test "$arrows" -gt 100 || fail "only $arrows arrows"
echo "$((checks + arrows)) checks passed"
