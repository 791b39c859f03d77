#!/bin/sh
# The part of `make bench` that holds what the others measured against the aims. Usage: bench_aims.sh WORK
set -eu
work=$1
here=$(dirname "$0")

echo '### Aims'
echo
echo 'User and system time; of the start, wall time. Rows: the two results above, one million rows or the most there are.'
echo
for part in rows calcs start; do
    awk -f "$here/medians.awk" "$work/$part.times" | sed "s/^/$part /"
done | awk '
    $1 == "rows" {
        split($2, part, ":")
        n = part[1]
        cpu[n, part[2]] = $3
        if (part[2] == "holdwater" && (size == 0 || n <= 1000000)) size = n
        if (part[2] == "holdwater" && $5 > peak) peak = $5
    }
    $1 == "calcs" { calc[$2] = $3 }
    $1 == "start" { start[$2] = $4 }
    function aim(what, got, least, most,    met) {
        met = least != "" ? got >= least : got <= most
        printf "| %s | %s %s | %." (got < 100 ? 2 : 0) "f | %s |\n", what, (least != "" ? "at least" : "at most"), \
            least most, got, met ? "yes" : "**no**"
    }
    function absent(what) { printf "| %s | | not measured | |\n", what }
    END {
        us = cpu[size, "holdwater"]
        print "| aim | | measured | met |"
        print "|---|---|---|---|"
        if ((size, "mawk") in cpu) {
            aim("mawk / holdwater", cpu[size, "mawk"] / us, 10, "")
            aim("the same, with wide vectors", cpu[size, "mawk"] / us, 20, "")
        } else absent("mawk / holdwater")
        if ((size, "duckdb") in cpu) aim("DuckDB / holdwater", cpu[size, "duckdb"] / us, 8, ""); else absent("DuckDB / holdwater")
        aim("holdwater / `wc -l`", us / cpu[size, "wc"], "", 17)
        aim("the same, with wide vectors", us / cpu[size, "wc"], "", 7)
        aim("peak memory of rows, KiB (4 MB)", peak, "", 3906)
        aim("start of one answer / a program with libm", start["holdwater"] / start["libm"], "", 1.15)
        k = split("blend 1500 salinity 600 challenge 600", word, " ")
        for (i = 1; i < k; i += 2) aim("`" word[i] "`, ns a row", calc[word[i]] / rows_each, "", word[i + 1])
        k = split("salinity challenge", word, " ")
        for (i = 1; i <= k; i++) {
            if (("mawk:" word[i]) in calc) aim("mawk / holdwater, `" word[i] "`", calc["mawk:" word[i]] / calc[word[i]], 3, "")
            else absent("mawk / holdwater, `" word[i] "`")
        }
    }' rows_each="$(awk 'END { print NR - 1 }' "$work/calc-blend.csv")" -
