#!/bin/sh
# The part of `make bench` that times the rows of every calculation: the first example of its help, its numbers varied.
# Usage: bench_calcs.sh WORK; ROUNDS, BENCH_ROWS, HOLDWATER.
set -eu
work=$1
here=$(dirname "$0")
times=$work/calcs.times
: >"$times"
count=$((BENCH_ROWS / 10))
[ $count -ge 20000 ] || count=20000
[ $count -le 100000 ] || count=100000

# The map names each calculation in a line of its own; two of those are commands without rows of questions.
names=$("$HOLDWATER" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' | grep -vx -e calendar -e trend)
for name in $names; do
    "$HOLDWATER" help "$name" examples |
        awk -v count=$count -v options="$work/calc-$name.options" -f "$here/example_rows.awk" >"$work/calc-$name.csv"
done

# ask NAME [OPTION...] behind a prefix: all results of all rows.
ask() {
    name=$1
    shift
    # shellcheck disable=SC2046 # words
    "$@" "$HOLDWATER" "$name" --rows "$work/calc-$name.csv" $(cat "$work/calc-$name.options")
}

# The same values from awk, where that can do the same without much ado.
peers=
if command -v mawk >/dev/null; then peers='salinity challenge'; fi
compared=
for name in $peers; do
    ask "$name" env >"$work/ours" 2>"$work/errors"
    mawk -f "$here/$name.awk" "$work/calc-$name.csv" >"$work/theirs"
    said=$("$work/same_values" "$work/ours" "$work/theirs") || { echo "values differ: $name" >&2; exit 1; }
    compared="$compared* values, $name: $said
"
done

round=0
while [ $round -lt "$ROUNDS" ]; do
    for name in $names; do
        # Some rows of a varied example may be beyond an answer: those are told below.
        ask "$name" "$work/stopwatch" -o "$times" -k "$name" -s 013 2>"$work/calc-$name.errors"
    done
    for name in $peers; do
        "$work/stopwatch" -o "$times" -k "mawk:$name" mawk -f "$here/$name.awk" "$work/calc-$name.csv"
    done
    round=$((round + 1))
done

echo '### Rows of every calculation'
echo
echo "$count rows, all results; columns and options as in the first example of \`holdwater help NAME examples\`."
echo
printf %s "$compared"
echo
awk -f "$here/medians.awk" "$times" | awk -v n=$count '
    $1 ~ /^mawk:/ { sub(/^mawk:/, "", $1); mawk[$1] = $2; next }
    { name[++count] = $1; cpu[$1] = $2; wall[$1] = $3; peak[$1] = $4 }
    END {
        print "| calculation | ns a row, user + system | wall | mawk, the same arithmetic | times holdwater | peak memory |"
        print "|---|---|---|---|---|---|"
        for (i = 1; i <= count; i++) {
            k = name[i]
            theirs = k in mawk ? sprintf("%.0f | %.1f", mawk[k] / n, mawk[k] / cpu[k]) : " | "
            printf "| `%s` | %.0f | %.0f | %s | %d KiB |\n", k, cpu[k] / n, wall[k] / n, theirs, peak[k]
        }
    }'
for name in $names; do
    [ ! -s "$work/calc-$name.errors" ] || sed "s/^holdwater: /\n* \`$name\`: /" "$work/calc-$name.errors"
done
