#!/bin/sh
# The part of `make bench` that looks for files whose time grows faster than they do: each shape at three sizes, n, 2n, 4n.
# Usage: bench_shapes.sh WORK; ROUNDS, BENCH_ROWS and what peer.sh wants.
set -eu
work=$1
here=$(dirname "$0")
times=$work/shapes.times
: >"$times"
rows=$((BENCH_ROWS / 10))
[ $rows -ge 10000 ] || rows=10000
[ $rows -le 50000 ] || rows=50000
[ -x "$(command -v mawk)" ] && mawk=mawk || mawk=
[ -x "$(command -v mlr)" ] && miller=miller || miller=

# Name, least size, statuses of holdwater, how often each round, bytes of a piece of a pipe (0: the file itself), and who reads
# that shape: awk only where its cells can be told by a plain separator; miller 6 takes no ends of lines that are CR alone,
# and of a long cell full of quotes it says that the quotes are wrong when it comes through a pipe in pieces.
shapes="
plain $rows 0 1 0 $mawk $miller
wide $((rows / 10)) 0 1 0 $mawk $miller
digits $rows 0 1 0 $mawk $miller
quoted $rows 0 1 0 $mawk $miller
bad $rows 1 1 0 $mawk $miller
cr $rows 2 5 0 $mawk
cr-rows $rows 12 5 0
record 250000 0 5 100 $mawk $miller
quotes 250000 0 5 100 $mawk
"

# awk_told SHAPE: what awk is told of it, a word for env.
awk_told() {
    case $1 in
    quoted) echo 'AWK_CUT=","' ;;
    cr) echo 'AWK_END=\r' ;;
    *) echo 'AWK_CUT=' ;;
    esac
}

# once SHAPE SIZE STATUSES TIMES PIECE PEER
once() {
    file=$work/shape-$1-$2.csv
    right=0
    [ "$6" != holdwater ] || right=$3
    if [ "$5" -gt 0 ]; then
        env "$(awk_told "$1")" sh "$here/peer.sh" "$6" - "$work/stopwatch" -o "$times" -k "$1:$6:$2" -n "$4" \
            -s "$right" -p "$5" "$file"
    else
        env "$(awk_told "$1")" sh "$here/peer.sh" "$6" "$file" "$work/stopwatch" -o "$times" -k "$1:$6:$2" -n "$4" \
            -s "$right"
    fi 2>"$work/errors" || { cat "$work/errors" >&2; exit 1; }
}

# shape NAME LEAST STATUSES TIMES PIECE PEER...: files, values, and one round.
shape() {
    name=$1 least=$2 statuses=$3 times_each=$4 piece=$5
    shift 5
    for size in "$least" $((2 * least)) $((4 * least)); do
        file=$work/shape-$name-$size.csv
        if [ -z "$(find "$file" -newer "$here/make_rows.awk" 2>/dev/null)" ]; then
            awk -v count="$size" -v shape="$name" -f "$here/make_rows.awk" >"$file"
        fi
        for peer in holdwater "$@"; do
            once "$name" "$size" "$statuses" "$times_each" "$piece" "$peer"
        done
    done
}

# The same values first, where both read the numbers of all rows and write the cells as they are.
said=
for name in wide digits quoted; do
    [ -n "$mawk" ] || continue
    least=$rows
    [ $name != wide ] || least=$((rows / 10))
    file=$work/shape-$name-$least.csv
    awk -v count=$least -v shape=$name -f "$here/make_rows.awk" >"$file"
    sh "$here/peer.sh" holdwater "$file" >"$work/ours"
    env "$(awk_told $name)" sh "$here/peer.sh" mawk "$file" >"$work/theirs"
    same=$("$work/same_values" "$work/ours" "$work/theirs") || { echo "values differ: $name" >&2; exit 1; }
    said="$said* values, $name, mawk: $same
"
done

round=0
while [ $round -lt "$ROUNDS" ]; do
    echo "$shapes" | while read -r line; do
        # shellcheck disable=SC2086 # words
        [ -z "$line" ] || shape $line
    done
    round=$((round + 1))
done

echo '### Hostile files'
echo
echo "ms of user and system time at n, 2n and 4n, and in brackets how much longer 4n takes than n: near 4, or less where"
echo "starting the program is most of it. \`record\` and \`quotes\` come through a pipe in pieces of 100 bytes."
echo
printf %s "$said"
echo
awk -f "$here/medians.awk" "$times" | awk '
    BEGIN {
        what["plain"] = "as above, rows"; what["wide"] = "200 columns, rows"; what["digits"] = "17 digits a number, rows"
        what["quoted"] = "all cells in quotes, rows"; what["bad"] = "every other row bad, rows"
        what["cr"] = "line ends of CR alone: refused with what to do, rows"
        what["cr-rows"] = "the same but for the header: one record, refused, rows"
        what["record"] = "one record, bytes"; what["quotes"] = "one record full of quotes, bytes"
    }
    {
        split($1, part, ":")
        if (!(part[1] in least)) { shape[++count] = part[1]; least[part[1]] = part[3] }
        cpu[part[1], part[2], part[3] / least[part[1]]] = $2 / 1e6
    }
    function cell(s, p) {
        if (!((s, p, 1) in cpu)) return "-"
        growth = cpu[s, p, 4] / cpu[s, p, 1]
        return sprintf("%.1f, %.1f, %.1f (%.1f)%s", cpu[s, p, 1], cpu[s, p, 2], cpu[s, p, 4], growth, \
            (p == "holdwater" && growth > 6) ? " TOO STEEP" : "")
    }
    END {
        print "| file | n | holdwater | mawk | miller |"
        print "|---|---|---|---|---|"
        for (i = 1; i <= count; i++) {
            s = shape[i]
            printf "| %s | %d | %s | %s | %s |\n", what[s], least[s], cell(s, "holdwater"), cell(s, "mawk"), cell(s, "miller")
        }
    }'
