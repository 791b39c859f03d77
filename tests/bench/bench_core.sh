#!/bin/sh
# The part of `make bench` that times each function of the library. Usage: bench_core.sh WORK; ROUNDS.
set -eu
work=$1
reference=$(dirname "$0")/../reference
prototypes=$(dirname "$0")/../core/library_prototypes.h

{
    grep -o '[ *]hw_[a-z0-9_]*(' "$prototypes" | sed 's/.hw_\(.*\)(/function \1/'
    cut -d, -f1,2 "$reference"/*.csv | sed 's/^/row /'
} | "$work/core_times" "$ROUNDS" | LC_ALL=C sort -k2,2gr -k1,1 >"$work/core"

cat <<'END'
### Functions of the library

A call with inputs of the reference sheets. The call itself, through a pointer, is in it: about the least of these figures.
`trend_...` are over 100 readings; `carbonate_water_...` and `blend_level` are given the water or the mixture, made ready once.

END
awk -v from=50 '
    $2 == "-" { missed = missed " `" $1 "`"; next }
    $2 >= from { slow[++s] = $1; ns[s] = $2; next }
    { quick = quick (q++ ? ", " : "") "`" $1 "` " sprintf("%.0f", $2) }
    function cell(i) { return i <= s ? "`" slow[i] "` | " sprintf("%.0f", ns[i]) : " |" }
    END {
        print "| function | ns | function | ns |"
        print "|---|---|---|---|"
        half = int((s + 1) / 2)
        for (i = 1; i <= half; i++) print "| " cell(i) " | " cell(i + half) " |"
        printf "\nThe other %d take less than %d ns: %s.\n", q, from, quick
        if (missed != "") print "\nNot timed, as core_times.c has no inputs for them:" missed "."
    }' "$work/core"
