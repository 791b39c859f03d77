#!/bin/sh
# A file in pieces by GNU parallel and by xargs: the bytes of a single run, the exit status, and what does not split.
# And the blocks of docs/scale.md, with the real programs.
# Usage: test_parallel.sh BUILD
set -eu
. tests/scratch.sh
command -v parallel >/dev/null && parallel --version 2>/dev/null | grep -q '^GNU parallel' ||
    { echo "skipped: rows in pieces, as there is no GNU parallel"; exit 0; }
root=$(cd "$(dirname "$0")/../.." && pwd)
program=$build/holdwater
cd "$scratch"
HOME=$scratch # parallel keeps files there
export HOME
checks=0

fail() {
    echo "$*" >&2
    exit 1
}

# whole FILE: the pieces in it as one table, with one header.
whole() {
    awk 'NR == 1 { header = $0 } NR == 1 || $0 != header' "$1"
}

# single FILE OPTION...: one run, into single.csv and status.
single() {
    file=$1
    shift
    status=0
    "$program" ammonia --rows "$file" "$@" >single.csv 2>single.err || status=$?
}

# pieces FILE BLOCK OPTION...: the same in pieces, into pieces.csv; `gravest` is the gravest status of a piece, and
# `failed` how many had one.
pieces() {
    file=$1 block=$2
    shift 2
    failed=0
    parallel -k --pipepart -a "$file" --header : --block "$block" --joblog jobs \
        "$program" ammonia --rows - "$@" >pieces 2>pieces.err || failed=$?
    whole pieces >pieces.csv
    count=$(awk 'END { print NR - 1 }' jobs)
    gravest=$(awk 'NR > 1 { bad[$7]++ } END { print 2 in bad ? 2 : 3 in bad ? 3 : 1 in bad ? 1 : 0 }' jobs)
}

# alike FILE BLOCK OPTION...: both are the same, status too, and there were several pieces.
alike() {
    file=$1 block=$2
    shift 2
    single "$file" "$@"
    pieces "$file" "$block" "$@"
    cmp single.csv pieces.csv
    [ "$gravest" -eq $status ] || fail "$file in pieces of $block: status $gravest, not $status"
    [ "$count" -gt 1 ] || fail "$file in pieces of $block: one piece"
    checks=$((checks + 1))
}

awk 'BEGIN {
    split("alder birch cedar", tank, " ")
    x = 20310305
    print "when,tank,tan,ph,temp,salinity"
    for (i = 0; i < 1500; i++) {
        for (k = 1; k <= 4; k++) { x = (x * 16807) % 2147483647; r[k] = x / 2147483647 }
        printf "2031-03-%02dT%02d:%02d:00,%s,%.2f,%.2f,%.1f,%.1f\n", 1 + i % 28, i % 24, i % 60, tank[1 + i % 3], \
            r[1] * 2, 7.6 + r[2] * 0.8, 22 + r[3] * 6, 30 + r[4] * 6
    }
}' >rows.csv

# A header, pieces of several sizes; no line feed at the end; two bytes at the end of each line, and a mark before all.
alike rows.csv 15k --only free_percent,free
alike rows.csv 30k
head -c -1 rows.csv >no-end.csv
alike no-end.csv 25k --only free
{ printf '\357\273\277'; sed 's/$/\r/' rows.csv; } >marked.csv
alike marked.csv 25k --only free

# Quotes, as long as no line ends within them.
sed 's/,\([a-z]*\),/,"\1, ""left""",/2; s/,alder,/,"alder, ""left""",/' rows.csv >quoted.csv
alike quoted.csv 25k --only free

# Through a pipe.
parallel -k --pipe --header : --block 25k "$program" ammonia --rows - --only free <rows.csv >pieces
single rows.csv --only free
whole pieces | cmp - single.csv
checks=$((checks + 1))

# Rows that are bad make the status of their piece, and of parallel: as many as had some.
awk -F, -v OFS=, 'NR > 1400 { $3 = "n/a" } 1' rows.csv >bad.csv
alike bad.csv 25k --only free
[ $status -eq 1 ]
if [ "$failed" -lt 1 ] || [ "$failed" -ge "$count" ]; then
    fail "$failed of $count pieces failed, though the bad rows stand at the end"
fi
alike bad.csv 25k --only free --on-bad drop

# Messages count the rows of a piece, and so do the objects of jsonl; a column of numbers says which row it was.
single bad.csv --only free --on-bad stop
grep -q 'row 1400: not-a-number tan' single.err || fail "a single run does not name row 1400"
pieces bad.csv 25k --only free --on-bad stop
if grep -q 'row 1400:' pieces.err || ! grep -q 'row [0-9]*: not-a-number tan' pieces.err; then
    fail "pieces count the rows of the file: docs/scale.md says that they do not"
fi
awk -v OFS=, 'NR == 1 { print "line", $0; next } { print NR - 1, $0 }' bad.csv >numbered.csv
alike numbered.csv 25k --only free
[ "$(awk -F, '$NF ~ /not-a-number/ { print $1; exit }' pieces.csv)" -eq 1400 ]
single rows.csv --only free --format jsonl
pieces rows.csv 25k --only free --format jsonl
sed 's/"row": [0-9]*, //' pieces >pieces.json
sed 's/"row": [0-9]*, //' single.csv | cmp - pieces.json
if cmp -s single.csv pieces; then fail "jsonl counts the rows of the file: docs/scale.md says that it does not"; fi
checks=$((checks + 4))

# A cell with line ends in quotes must not be split by lines. The piece that ends within one says so, with status 2.
awk 'BEGIN {
    print "remark,tan,ph,temp,salinity"
    for (i = 0; i < 200; i++) {
        printf "\""
        for (k = 0; k < 40; k++) print "seen again"
        print "\",0.31,8.11,26.2,35.7"
    }
}' >lines.csv
single lines.csv --only free
[ $status -eq 0 ]
pieces lines.csv 20k --only free
[ "$gravest" -eq 2 ] || fail "cells split in their quotes: status $gravest"
grep -q 'a quote opens there that no quote closes' pieces.err
checks=$((checks + 2))

# A folder of files, several at a time.
mkdir sheets
for name in alder birch cedar; do
    { head -n 1 rows.csv; grep ",$name," rows.csv; } >"sheets/$name.csv"
    "$program" ammonia --rows "sheets/$name.csv" --only free >"sheets/$name.want"
done
find sheets -name '*.csv' -print0 | HOLDWATER=$program xargs -0 -P 2 -n 1 sh -c \
    '"$HOLDWATER" ammonia --rows "$1" --only free >"${1%.csv}.out"' sh
for name in alder birch cedar; do
    cmp "sheets/$name.out" "sheets/$name.want"
    checks=$((checks + 1))
done

# Other programs start holdwater there: it is found by its name.
PATH=$build:$PATH HOLDWATER=$program HOLDWATER_RUN=${HOLDWATER_RUN:-} HOLDWATER_DATA=$root/data "$build/tests/cli/run_cases" "$root/docs/scale.md"
echo "$checks checks passed"
