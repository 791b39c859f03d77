#!/bin/sh
# The demo ends well, has a command of every calculation, and its logbook runs forward through 2031.
# Usage: test_demo.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
checks=0

HOLDWATER=$program HOLDWATER_DATA=$PWD/data sh data/demo/demo.sh >"$work/out.txt"
checks=$((checks + 1))

# The map names each calculation in a line of its own, two blanks in.
"$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' >"$work/names.txt"
while read -r name; do
    if ! grep -q "^\$ holdwater $name " "$work/out.txt"; then
        echo "the demo never asks $name" >&2
        exit 1
    fi
    checks=$((checks + 1))
done <"$work/names.txt"
[ -s "$work/names.txt" ]

# Every line that was logged is in the logbook at the end, in the order of its times.
sed -n '/^when,tank,calculation,/,$p' "$work/out.txt" | tail -n +2 >"$work/logbook.csv"
logged=$(grep -c '^\$ .* --format log ' "$work/out.txt")
[ "$(wc -l <"$work/logbook.csv")" -eq "$logged" ]
cut -d, -f1 "$work/logbook.csv" >"$work/when.txt"
LC_ALL=C sort -c "$work/when.txt"
[ "$(grep -c '^2031-' "$work/when.txt")" -eq "$logged" ]
checks=$((checks + 3))

echo "$checks checks passed"
