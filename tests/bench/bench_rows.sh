#!/bin/sh
# The part of `make bench` that holds rows against other programs: values first, then times, then tables.
# Usage: bench_rows.sh WORK PEER...; ROUNDS, BENCH_ROWS and what peer.sh wants.
set -eu
work=$1
shift
here=$(dirname "$0")
times=$work/rows.times
: >"$times"
# Slower than this, in ns of user and system time a row, and a program sits out more than a million rows.
slow=2000

sizes=
for n in 100000 1000000 10000000; do
    [ $n -ge "$BENCH_ROWS" ] || sizes="$sizes $n"
done
sizes="$sizes $BENCH_ROWS"

# taken PEER N: ns a row, user and system, of that program at that size so far; nothing if it did not run.
taken() {
    awk -v key="$2:$1" -v n="$2" '$1 == key { sum += $2; runs++ } END { if (runs) printf "%d", sum / runs / n }' "$times"
}

# sits_out PEER N
sits_out() {
    [ "$2" -gt 1000000 ] || return 1
    before=$(taken "$1" 1000000)
    [ -z "$before" ] || [ "$before" -gt $slow ]
}

echo '### Rows against other programs'
for n in $sizes; do
    file=$work/rows-$n.csv
    if [ -z "$(find "$file" -newer "$here/make_rows.awk" 2>/dev/null)" ]; then
        awk -v count="$n" -f "$here/make_rows.awk" >"$file.new"
        mv "$file.new" "$file"
    fi
    playing=
    out=
    for peer in "$@"; do
        if sits_out "$peer" "$n"; then out="$out $peer"; else playing="$playing $peer"; fi
    done
    echo
    echo "#### $n rows"
    echo

    # The same values first, in every row. Pipes, so that no disk is filled.
    for peer in $playing; do
        case $peer in holdwater | wc) continue ;; esac
        rm -f "$work/ours" "$work/theirs"
        mkfifo "$work/ours" "$work/theirs"
        sh "$here/peer.sh" holdwater "$file" >"$work/ours" &
        writers=$!
        sh "$here/peer.sh" "$peer" "$file" >"$work/theirs" &
        writers="$writers $!"
        # shellcheck disable=SC2086 # words
        said=$("$work/same_values" "$work/ours" "$work/theirs") || {
            echo "values differ: $peer" >&2
            kill $writers 2>/dev/null || true
            exit 1
        }
        wait
        echo "* values, $peer: $said"
    done
    rm -f "$work/ours" "$work/theirs"

    round=0
    while [ $round -lt "$ROUNDS" ]; do
        for peer in $playing; do
            sh "$here/peer.sh" "$peer" "$file" "$work/stopwatch" -o "$times" -k "$n:$peer"
        done
        round=$((round + 1))
    done
    [ -z "$out" ] || echo "* sits out, slower than $slow ns a row:$out"
    echo
    awk -f "$here/medians.awk" "$times" | awk -v n="$n" '
        { split($1, part, ":") }
        part[1] == n { name[++count] = part[2]; cpu[part[2]] = $2; wall[part[2]] = $3; peak[part[2]] = $4 }
        END {
            print "| program | ns a row, user + system | wall | times holdwater, user + system | wall | peak memory |"
            print "|---|---|---|---|---|---|"
            for (i = 1; i <= count; i++) {
                p = name[i]
                printf "| %s | %.1f | %.1f | %.2f | %.2f | %d KiB |\n", p == "wc" ? "wc -l" : p, cpu[p] / n, wall[p] / n, \
                    cpu[p] / cpu["holdwater"], wall[p] / wall["holdwater"], peak[p]
            }
            if ("wc" in cpu) {
                printf "\nholdwater takes %.1f times the user and system time of `wc -l`, %.1f times the wall time.\n", \
                    cpu["holdwater"] / cpu["wc"], wall["holdwater"] / wall["wc"]
            }
        }'
done
