#!/bin/sh
# Rows against one-off questions, on random data: the same digits; a shuffle of columns changes nothing but order; and the
# quick lane for plain records gives what the ordinary code gives.
# Usage: test_rows_alike.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
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
}' >"$scratch/rows.csv"

"$program" ammonia --rows "$scratch/rows.csv" --digits 17 >"$scratch/out.csv"
checks=0

# One question a row; a table of one row holds the inputs, too, so the results are the columns after limit_basis.
tail -n +2 "$scratch/rows.csv" | while IFS=, read -r tan basis ph scale temp salinity; do
    "$program" ammonia --tan "$tan" --basis "$basis" --ph "$ph" --ph-scale "$scale" --temp "$temp" \
        --salinity "$salinity" --digits 17 --format csv | tail -n 1 | cut -d, -f13-22
done >"$scratch/one-off.csv"
tail -n +2 "$scratch/out.csv" | cut -d, -f7-16 >"$scratch/by-rows.csv"
cmp "$scratch/one-off.csv" "$scratch/by-rows.csv"
checks=$((checks + 1))

# Columns in another order, two strangers among them.
awk -F, -v OFS=, '{ print "x" NR, $6, $3, $1, $5, "y", $2, $4 }' "$scratch/rows.csv" |
    sed '1s/.*/note,salinity,ph,tan,temp,other,basis,ph_scale/' >"$scratch/shuffled.csv"
"$program" ammonia --rows "$scratch/shuffled.csv" --digits 17 | tail -n +2 | cut -d, -f9- >"$scratch/again.csv"
tail -n +2 "$scratch/out.csv" | cut -d, -f7- | cmp - "$scratch/again.csv"
checks=$((checks + 1))

# What is written is read again to the same bits: 17 digits of every result.
cut -d, -f7,9 "$scratch/out.csv" | sed '1s/.*/tan,pka/' >"$scratch/results.csv"
"$program" ammonia --rows "$scratch/results.csv" --ph 8.15 --temp 25 --salinity 34 --only free --format jsonl |
    sed 's/.*"tan": {"value": \([^,]*\),.*/\1/' >"$scratch/read.txt"
tail -n +2 "$scratch/results.csv" | cut -d, -f1 | awk '{ printf "%.17g\n", $1 }' >"$scratch/want.txt"
awk '{ printf "%.17g\n", $1 }' "$scratch/read.txt" | cmp - "$scratch/want.txt"
checks=$((checks + 1))

# The quick lane for plain records against the ordinary code, which every record with a quote goes through: a file, and
# the same file with the tank in quotes in each row, which is all that the answers then differ in.
lane_rows=1500
awk -v seed=$seed -v count=$lane_rows 'BEGIN {
    srand(seed)
    n = split(". 5. .5 -1 +1 1e0 0 0.0 00.5 1.2.3 0x1 nan 12345678 123456789 1234.567 0.0000001 1e-13 1000 1000.01 45 " \
        "45.00001 1.02 0.98 1.06 1.0600001 1.07 0.97 40 40.1 10 4.99 10.01 25C 77F 0.6mg/L 34ppt 0.6+-0.1 7:8:0.1 " \
        "8.123456789012345 0.1000000000000000055 8..1 8.1- / 9: 1_0 NONE BLANK TRAIL LEAD", odd, " ")
    print "when,tank,tan,ph,temp,salinity,remark"
    for (i = 0; i < count; i++) {
        cell[1] = sprintf("%.2f", rand() * 3); cell[2] = sprintf("%.2f", 7 + rand() * 2)
        cell[3] = sprintf("%.1f", 15 + rand() * 20); cell[4] = sprintf("%.1f", (rand() < 0.3 ? 20 : 45) * rand())
        for (k = int(rand() * 3); k > 0; k--) {
            new = odd[1 + int(rand() * n)]
            sub(/NONE/, "", new); sub(/BLANK/, " ", new); sub(/TRAIL/, "8 ", new); sub(/LEAD/, " 8", new)
            cell[1 + int(rand() * 4)] = new
        }
        end = sprintf("%*s", rand() < 0.01 ? 9000 : rand() < 0.3 ? 0 : 1 + int(rand() * 40), "x")
        if (rand() < 0.03) end = end ",more"
        last = rand() < 0.03 ? "" : cell[4] "," end
        printf "t%d,alder,%s,%s,%s,%s\n", i, cell[1], cell[2], cell[3], last
    }
}' >"$scratch/odd.csv"

# alike NAME FILE SEPARATOR OPTION...: both lanes give the same, and the same messages and status.
alike() {
    name=$1 file=$2 separator=$3
    shift 3
    quoted="${separator}\"alder\"$separator"
    sed "s/${separator}alder$separator/$quoted/" "$file" >"$scratch/quoted-$name"
    for lane in "$file" "$scratch/quoted-$name"; do
        status=0
        "$program" ammonia --rows - "$@" <"$lane" >"$scratch/lane" 2>"$scratch/told" || status=$?
        sed "s/$quoted/${separator}alder$separator/" "$scratch/lane" >"$scratch/lane-${lane##*/}"
        { cat "$scratch/told"; echo "status $status"; } >"$scratch/told-${lane##*/}"
    done
    cmp "$scratch/lane-${file##*/}" "$scratch/lane-quoted-$name"
    cmp "$scratch/told-${file##*/}" "$scratch/told-quoted-$name"
    test "$(wc -l <"$scratch/lane-quoted-$name")" -ge 400
    checks=$((checks + 3))
}

tr ',' ';' <"$scratch/odd.csv" >"$scratch/odd.semicolons"
tr ',' '\t' <"$scratch/odd.csv" >"$scratch/odd.tabs"
tr ',.' ';,' <"$scratch/odd.csv" >"$scratch/odd.commas"
awk -F, -v OFS=, '{ for (i = 0; i < 194; i++) printf "%s,", NR == 1 ? "c" i : i * NR % 1000; print }' \
    "$scratch/odd.csv" >"$scratch/odd.wide"
alike odd "$scratch/odd.csv" ,
alike two "$scratch/odd.csv" , --only free_percent,free
alike seventeen "$scratch/odd.csv" , --digits 17
alike dropped "$scratch/odd.csv" , --on-bad drop
alike lines "$scratch/odd.csv" , --format jsonl --only free
alike own "$scratch/odd.csv" , --long-limit 0.02mg/L --only long_ratio
alike bound "$scratch/odd.csv" , --medicine binder --basis nh4 --dilution 2
alike wide "$scratch/odd.wide" , --only free
alike semicolons "$scratch/odd.semicolons" ';' --separator semicolon
alike commas "$scratch/odd.commas" ';' --decimal comma

# Between tabs a quote is a character like any other; line ends of two bytes are left out of the answer; and pieces that
# end anywhere make a whole.
"$program" ammonia --rows "$scratch/odd.csv" >"$scratch/want.csv" 2>/dev/null || test $? -eq 1
sed 's/$/\r/' "$scratch/odd.csv" | "$program" ammonia --rows - 2>/dev/null >"$scratch/crlf.csv" || test $? -eq 1
cmp "$scratch/want.csv" "$scratch/crlf.csv"
"$program" ammonia --rows "$scratch/odd.tabs" --separator tab --format tsv 2>/dev/null >"$scratch/tabs" || test $? -eq 1
tr ',' '\t' <"$scratch/want.csv" | grep -v 'more' >"$scratch/want.tabs"
grep -v 'more' "$scratch/tabs" | cmp - "$scratch/want.tabs"
for size in 1000 8191 20011; do
    dd if="$scratch/odd.csv" bs=$size 2>/dev/null | "$program" ammonia --rows - 2>/dev/null >"$scratch/pieces" || test $? -eq 1
    cmp "$scratch/want.csv" "$scratch/pieces"
done
checks=$((checks + 5))

# One-off and rows once more, where rows are reckoned side by side: salt water on a meter's scale, ends of ranges in it.
awk -v seed=$seed 'BEGIN {
    srand(seed)
    print "tan,ph,temp,salinity"
    for (i = 0; i < 60; i++)
        printf "%s,%s,%s,%s\n", i % 7 ? sprintf("%.3f", rand() * 6) : i % 2 ? 0 : 1000, \
            i % 11 ? sprintf("%.2f", 5 + rand() * 5) : i % 2 ? 5 : 10, i % 13 ? sprintf("%.1f", rand() * 40) : i % 2 ? 0 : 40, \
            i % 5 ? sprintf("%.1f", 3 + rand() * 42) : 45
}' >"$scratch/meter.csv"
"$program" ammonia --rows "$scratch/meter.csv" --digits 17 | tail -n +2 | cut -d, -f5-14 >"$scratch/by-rows.csv"
tail -n +2 "$scratch/meter.csv" | while IFS=, read -r tan ph temp salinity; do
    "$program" ammonia --tan "$tan" --ph "$ph" --temp "$temp" --salinity "$salinity" --digits 17 --format csv |
        tail -n 1 | rev | cut -d, -f1-10 | rev
done >"$scratch/one-off.csv"
cmp "$scratch/one-off.csv" "$scratch/by-rows.csv"
checks=$((checks + 1))

echo "$checks checks passed"
