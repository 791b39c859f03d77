# medians.awk - of each key of a stopwatch's file: the medians of cpu and wall, the greatest peak, how many runs.
function median(list, key, n,    i, k, v, sorted) {
    for (i = 1; i <= n; i++) {
        v = list[key, i]
        for (k = i - 1; k >= 1 && sorted[k] > v; k--) sorted[k + 1] = sorted[k]
        sorted[k + 1] = v
    }
    return (sorted[int((n + 1) / 2)] + sorted[int(n / 2) + 1]) / 2
}
!($1 in n) { keys[++count] = $1 }
{ i = ++n[$1]; cpu[$1, i] = $2 + 0; wall[$1, i] = $3 + 0; if ($4 > peak[$1]) peak[$1] = $4 + 0 }
END {
    for (i = 1; i <= count; i++) {
        key = keys[i]
        printf "%s %.0f %.0f %d %d\n", key, median(cpu, key, n[key]), median(wall, key, n[key]), peak[key], n[key]
    }
}
