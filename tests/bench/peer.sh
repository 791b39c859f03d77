#!/bin/sh
# One program at the job of `make bench`: the two results of ammonia, of every row of FILE (- for standard input, where
# the program takes that), to stdout. PREFIX stands before its command. Usage: peer.sh NAME FILE [PREFIX...]; HOLDWATER names the program, DUCKDB the folder of DuckDB's package,
# AWK_CUT and AWK_END what separates and ends records for awk, where it is not the comma and the line feed.
set -eu
name=$1
file=$2
shift 2
here=$(dirname "$0")
case $name in
holdwater) set -- "$@" "$HOLDWATER" ammonia --rows "$file" --only free_percent,free ;;
wc) set -- "$@" wc -l "$file" ;;
mawk | gawk) set -- "$@" "$name" -v cut="${AWK_CUT:-}" -v end="${AWK_END:-}" -f "$here/rows.awk" "$file" ;;
miller)
    set -- "$@" mlr --csv put -f "$here/rows.mlr"
    [ "$file" = - ] || set -- "$@" "$file"
    ;;
sqlite3) set -- "$@" sqlite3 :memory: ".import --csv $file r" ".read $here/rows.sql" ;;
python) set -- "$@" /usr/bin/python3 "$here/rows.py" "$file" ;;
duckdb) set -- "$@" node "$here/rows_duckdb.js" "$file" ;;
*)
    echo "peer.sh: no $name" >&2
    exit 2
    ;;
esac
NODE_PATH=${DUCKDB:-} GOMAXPROCS=1 exec "$@"
