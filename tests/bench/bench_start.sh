#!/bin/sh
# The part of `make bench` that times one answer from its start. Usage: bench_start.sh WORK; ROUNDS, HOLDWATER.
set -eu
work=$1
times=$work/start.times
: >"$times"
runs=200

# start KEY COMMAND...
start() {
    key=$1
    shift
    "$work/stopwatch" -o "$times" -k "$key" -n $runs "$@" 2>"$work/errors" || { cat "$work/errors" >&2; exit 1; }
}

round=0
while [ $round -lt "$ROUNDS" ]; do
    start true /bin/true
    start libm "$work/startup"
    start holdwater "$HOLDWATER" ammonia --tan 0.2 --ph 8.15 --temp 25 --salinity 34 --format value
    start loaded "$work/loaded" ammonia --tan 0.2 --ph 8.15 --temp 25 --salinity 34 --format value
    start text "$HOLDWATER" ammonia --tan 0.2 --ph 8.15 --temp 25 --salinity 34
    round=$((round + 1))
done

echo '### One answer'
echo
echo "posix_spawn to wait4, medians of $((runs * ROUNDS)) runs."
echo
awk -f "$(dirname "$0")/medians.awk" "$times" | awk '
    BEGIN {
        name["true"] = "`/bin/true`"; name["libm"] = "a program that links libm"
        name["holdwater"] = "`holdwater ammonia ... --format value`"; name["text"] = "the same as text"
        name["loaded"] = "the same, made with `STATIC=`"
    }
    { key[NR] = $1; cpu[$1] = $2; wall[$1] = $3; peak[$1] = $4 }
    END {
        print "| program | wall, us | user + system, us | wall, times the one with libm | peak memory |"
        print "|---|---|---|---|---|"
        for (i = 1; i <= NR; i++) {
            k = key[i]
            printf "| %s | %.0f | %.0f | %.2f | %d KiB |\n", name[k], wall[k] / 1000, cpu[k] / 1000, wall[k] / wall["libm"], peak[k]
        }
    }'
