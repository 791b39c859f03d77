#!/bin/sh
# The demo ends well, has a command of every calculation, and its logbook runs forward through 2031.
# Usage: test_demo.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
checks=0

HOLDWATER=$program HOLDWATER_DATA=$PWD/data sh data/demo/demo.sh >"$scratch/out.txt"
checks=$((checks + 1))

# The map names each calculation in a line of its own, two blanks in.
"$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' >"$scratch/names.txt"
while read -r name; do
    if ! grep -q "^\$ holdwater $name " "$scratch/out.txt"; then
        echo "the demo never asks $name" >&2
        exit 1
    fi
    checks=$((checks + 1))
done <"$scratch/names.txt"
[ -s "$scratch/names.txt" ]

# Every line that was logged is in the logbook at the end, in the order of its times.
sed -n '/^when,tank,calculation,/,$p' "$scratch/out.txt" | tail -n +2 >"$scratch/logbook.csv"
logged=$(grep -c '^\$ .* --format log ' "$scratch/out.txt")
[ "$(wc -l <"$scratch/logbook.csv")" -eq "$logged" ]
cut -d, -f1 "$scratch/logbook.csv" >"$scratch/when.txt"
LC_ALL=C sort -c "$scratch/when.txt"
[ "$(grep -c '^2031-' "$scratch/when.txt")" -eq "$logged" ]
checks=$((checks + 3))

echo "$checks checks passed"
