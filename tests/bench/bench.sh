#!/bin/sh
# Speed as ratios against peers in the same run, interleaved. Usage: bench.sh BUILD [ROUNDS]
# HOLDWATER names the program. The largest file is BENCH_ROWS rows (10000000 if not set).
set -eu
build=$1
rounds=${2:-5}
largest=${BENCH_ROWS:-10000000}
here=$(dirname "$0")
work=$build/bench
mkdir -p "$work"
: >"$work/times"

now() { date +%s%N; }

# clock NAME COMMAND...: one run, output discarded; its time goes to the list of NAME.
clock() {
    name=$1
    shift
    start=$(now)
    "$@" >/dev/null 2>&1
    end=$(now)
    echo "$name $((end - start))" >>"$work/times"
}

# Many runs of something short, as one time.
hundred() {
    i=0
    while [ $i -lt 100 ]; do
        "$@" >/dev/null
        i=$((i + 1))
    done
}

rows() { "$HOLDWATER" ammonia --rows "$1" --only free_percent,free; }
peer() { mawk -f "$here/rows.awk" "$1"; }
one_off() { "$HOLDWATER" ammonia --tan 0.6 --ph 8.15 --temp 25 --salinity 34 --format value; }

for tool in mawk wc cc; do
    command -v $tool >/dev/null || echo "absent: $tool"
done
command -v duckdb >/dev/null || echo "absent: duckdb (not a Debian package)"

cc -O2 -o "$work/startup" "$here/startup.c" -lm
have_mawk=no
if command -v mawk >/dev/null; then have_mawk=yes; fi

sizes="100000 1000000"
[ "$largest" -gt 1000000 ] && sizes="$sizes $largest"
for n in $sizes; do
    [ -s "$work/rows-$n.csv" ] || awk -v count="$n" -f "$here/make_rows.awk" >"$work/rows-$n.csv"
done

# The same values first: every row, in the columns that both write.
if [ $have_mawk = yes ]; then
    rows "$work/rows-100000.csv" | cut -d, -f1-8 >"$work/ours"
    peer "$work/rows-100000.csv" >"$work/theirs"
    cmp "$work/ours" "$work/theirs"
    echo "values: 100000 rows alike, byte for byte"
fi

# Times.
for n in $sizes; do
    r=0
    while [ $r -lt "$rounds" ]; do
        clock "ours-$n" rows "$work/rows-$n.csv"
        [ $have_mawk = no ] || clock "mawk-$n" peer "$work/rows-$n.csv"
        clock "wc-$n" wc -l "$work/rows-$n.csv"
        r=$((r + 1))
    done
done
r=0
while [ $r -lt "$rounds" ]; do
    clock start-ours hundred one_off
    clock start-true hundred /bin/true
    clock start-libm hundred "$work/startup"
    r=$((r + 1))
done

awk -v sizes="$sizes" -v rounds="$rounds" '
    { if (!($1 in least) || $2 < least[$1]) least[$1] = $2; if ($2 > most[$1]) most[$1] = $2 }
    function line(name, key, per, unit) {
        if (key in least) printf "  %-28s %10.1f %10.1f %s\n", name, least[key] / per, most[key] / per, unit
    }
    END {
        printf "least and most of %d rounds\n", rounds
        k = split(sizes, size, " ")
        for (i = 1; i <= k; i++) {
            n = size[i]
            printf "%d rows\n", n
            line("holdwater", "ours-" n, n, "ns a row"); line("mawk", "mawk-" n, n, "ns a row")
            line("wc -l", "wc-" n, n, "ns a row")
            if (("mawk-" n) in least) printf "  ratio: mawk takes %.2f times as long\n", least["mawk-" n] / least["ours-" n]
            printf "  ratio: %.1f times as long as wc -l\n", least["ours-" n] / least["wc-" n]
        }
        print "start-up and one answer"
        line("holdwater ammonia", "start-ours", 1e5, "us"); line("/bin/true", "start-true", 1e5, "us")
        line("a program with libm", "start-libm", 1e5, "us")
        printf "  ratio: %.2f of the program with libm\n", least["start-ours"] / least["start-libm"]
    }' "$work/times"

# Memory: the peak of the largest run.
for n in $sizes; do last=$n; done
if [ -x /usr/bin/time ]; then
    /usr/bin/time -f "peak memory of $last rows: %M KiB" "$HOLDWATER" ammonia --rows "$work/rows-$last.csv" \
        --only free_percent,free 2>&1 >/dev/null | tail -n 1
else
    echo "absent: time (Debian package time), for the peak of memory"
fi
