#!/bin/sh
# Every file of the program stands in the tables of DEVELOPERS.md, and every file named there exists; every function of the
# library stands in docs/library.md once, with its header.
# Usage: test_named.sh BUILD
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
checks=0

ls src/*/*.[ch] include/holdwater/*.h src/tables/tables.awk | sed 's|.*/||' | sort -u >"$work/there"
sed -n 's/^| \(`[a-z0-9_`., ]*\) |.*/\1/p' DEVELOPERS.md | grep -o '[a-z0-9_]*\.[ch]' | sort >"$work/named_all"
sort -u "$work/named_all" >"$work/named"
if [ -n "$(uniq -d "$work/named_all")" ]; then
    echo "named twice in DEVELOPERS.md: $(uniq -d "$work/named_all" | tr '\n' ' ')" >&2
    exit 1
fi
grep '\.[ch]$' "$work/there" >"$work/sources"
if ! missing=$(comm -23 "$work/sources" "$work/named") || [ -n "$missing" ]; then
    printf 'not named in DEVELOPERS.md: %s\n' "$missing" >&2
    exit 1
fi
ls src/*/*.[ch] include/holdwater/*.h tests/*/*.[ch] | sed 's|.*/||' | sort -u >"$work/all"
if ! gone=$(comm -13 "$work/all" "$work/named") || [ -n "$gone" ]; then
    printf 'named in DEVELOPERS.md and not there: %s\n' "$gone" >&2
    exit 1
fi
checks=$((checks + $(wc -l <"$work/named")))

for header in include/holdwater/*.h; do
    sed -n 's/^int \(hw_[a-z0-9_]*\)(.*/\1/p' "$header" >"$work/functions"
    while read -r function; do
        n=$(grep -c "^| \`$function\` | \`${header##*/}\` |" docs/library.md || true)
        [ "$n" -eq 1 ] || { echo "docs/library.md names $function of ${header##*/} $n times" >&2; exit 1; }
        checks=$((checks + 1))
    done <"$work/functions"
done
[ "$checks" -gt 150 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
