#!/bin/sh
# Rows against one-off questions, on random data: the same digits; and a shuffle of columns changes nothing but order.
# Usage: test_rows_alike.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
seed=20310305
count=60
echo "seed $seed"

awk -v seed=$seed -v count=$count 'BEGIN {
    srand(seed)
    split("n nh3 nh4", basis, " ")
    split("meter total free sws nbs-rigorous", scale, " ")
    print "tan,basis,ph,ph_scale,temp,salinity"
    for (i = 0; i < count; i++) {
        printf "%.3f,%s,%.2f,%s,%.1f,%.1f\n", rand() * 6, basis[1 + int(rand() * 3)], 5 + rand() * 5, \
            scale[1 + int(rand() * 5)], rand() * 40, 2 + rand() * 43
    }
}' >"$work/rows.csv"

"$program" ammonia --rows "$work/rows.csv" --digits 17 >"$work/out.csv"
checks=0

# One question a row; a table of one row holds the inputs, too, so the results are the columns after limit_basis.
tail -n +2 "$work/rows.csv" | while IFS=, read -r tan basis ph scale temp salinity; do
    "$program" ammonia --tan "$tan" --basis "$basis" --ph "$ph" --ph-scale "$scale" --temp "$temp" \
        --salinity "$salinity" --digits 17 --format csv | tail -n 1 | cut -d, -f13-22
done >"$work/one-off.csv"
tail -n +2 "$work/out.csv" | cut -d, -f7-16 >"$work/by-rows.csv"
cmp "$work/one-off.csv" "$work/by-rows.csv"
checks=$((checks + count))

# Columns in another order, two strangers among them.
awk -F, -v OFS=, '{ print "x" NR, $6, $3, $1, $5, "y", $2, $4 }' "$work/rows.csv" |
    sed '1s/.*/note,salinity,ph,tan,temp,other,basis,ph_scale/' >"$work/shuffled.csv"
"$program" ammonia --rows "$work/shuffled.csv" --digits 17 | tail -n +2 | cut -d, -f9- >"$work/again.csv"
tail -n +2 "$work/out.csv" | cut -d, -f7- | cmp - "$work/again.csv"
checks=$((checks + count))

# What is written is read again to the same bits: 17 digits of every result.
cut -d, -f7,9 "$work/out.csv" | sed '1s/.*/tan,pka/' >"$work/results.csv"
"$program" ammonia --rows "$work/results.csv" --ph 8.15 --temp 25 --salinity 34 --only free --format jsonl |
    sed 's/.*"tan": {"value": \([^,]*\),.*/\1/' >"$work/read.txt"
tail -n +2 "$work/results.csv" | cut -d, -f1 | awk '{ printf "%.17g\n", $1 }' >"$work/want.txt"
awk '{ printf "%.17g\n", $1 }' "$work/read.txt" | cmp - "$work/want.txt"
checks=$((checks + count))

echo "$checks checks passed"
