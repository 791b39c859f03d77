#!/bin/sh
# The first line of every file of the program says what it is for; every file that DEVELOPERS.md names exists; every
# function of the library stands in docs/library.md once, with its header.
# Usage: test_named.sh BUILD
set -eu
. tests/scratch.sh
checks=0

for file in src/*/*.[ch] include/holdwater/*.h; do
    case $file in
    include/*) name=holdwater/${file##*/} ;;
    *) name=${file##*/} ;;
    esac
    case $(sed 1q "$file") in
    "/* $name - "?*) ;;
    *) echo "$file: its first line does not say what it is: /* $name - ..." >&2; exit 1 ;;
    esac
    checks=$((checks + 1))
done

# Files named in passing exist.
grep -o '`[a-z_./]*\.[ch]`' DEVELOPERS.md | tr -d '`' | sed 's|.*/||' | sort -u >"$scratch/named"
ls src/*/*.[ch] include/holdwater/*.h tests/*/*.[ch] | sed 's|.*/||' | sort -u >"$scratch/all"
# Those of the example, and what is built.
printf '%s\n' salt.h salt.c held_calc.c test_held.c test_salt_core.c tables.h tables.c >>"$scratch/all"
sort -u "$scratch/all" >"$scratch/there"
gone=$(comm -13 "$scratch/there" "$scratch/named")
[ -z "$gone" ] || { printf 'named in DEVELOPERS.md and not there: %s\n' "$gone" >&2; exit 1; }

for header in include/holdwater/*.h; do
    sed -n 's/^int \(hw_[a-z0-9_]*\)(.*/\1/p' "$header" >"$scratch/functions"
    while read -r function; do
        n=$(grep -c "^| \`$function\` | \`${header##*/}\` |" docs/library.md || true)
        [ "$n" -eq 1 ] || { echo "docs/library.md names $function of ${header##*/} $n times" >&2; exit 1; }
        checks=$((checks + 1))
    done <"$scratch/functions"
done
[ "$checks" -gt 150 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
