#!/bin/sh
# Speed as ratios against other programs in the same run, interleaved; the report on stdout, and in WORK/report.md.
# Usage: bench.sh WORK; HOLDWATER names the program, ROUNDS of how many the medians are, BENCH_ROWS the largest file,
# BENCH_CC what built it. Data are made there, seeded, and kept for the next time.
set -eu
work=$1
here=$(dirname "$0")
: "${HOLDWATER:?}" "${ROUNDS:=7}" "${BENCH_ROWS:=10000000}" "${BENCH_CC:=?}"
export HOLDWATER ROUNDS BENCH_ROWS
export LC_ALL=C
mkdir -p "$work"

# DuckDB comes from npm, into a folder of its own.
DUCKDB=$work/duckdb/node_modules
case $DUCKDB in /*) ;; *) DUCKDB=$PWD/$DUCKDB ;; esac
export DUCKDB
if command -v npm >/dev/null && command -v node >/dev/null && [ ! -d "$DUCKDB/@duckdb/node-api" ]; then
    mkdir -p "$work/duckdb"
    timeout 300 npm install --silent --no-audit --no-fund --prefix "$work/duckdb" @duckdb/node-api >"$work/npm.log" 2>&1 || true
fi

# Who is there, in which version.
peers='holdwater wc'
versions=
absent=
has() {
    versions="$versions, $2"
    peers="$peers $1"
}
lacks() { absent="$absent, $1"; }
if command -v mawk >/dev/null; then has mawk "$(mawk -W version 2>&1 | head -n 1)"; else lacks mawk; fi
if command -v gawk >/dev/null; then has gawk "$(gawk --version | head -n 1 | cut -d, -f1)"; else lacks gawk; fi
if command -v mlr >/dev/null; then has miller "$(mlr --version)"; else lacks 'miller (package miller)'; fi
if command -v sqlite3 >/dev/null && [ "$(sqlite3 :memory: 'select exp(0)' 2>/dev/null)" = 1.0 ]; then
    has sqlite3 "sqlite $(sqlite3 --version | cut -d' ' -f1)"
else
    lacks 'sqlite3 with exp()'
fi
if [ -x /usr/bin/python3 ]; then has python "$(/usr/bin/python3 --version)"; else lacks python3; fi
if [ -d "$DUCKDB/@duckdb/node-api" ] && NODE_PATH=$DUCKDB node -e 'require("@duckdb/node-api")' 2>/dev/null; then
    has duckdb "DuckDB $(sed -n 's/.*"version": *"\([^"]*\)".*/\1/p' "$DUCKDB/@duckdb/node-api/package.json") in node $(node --version)"
else
    lacks 'DuckDB (by npm)'
fi

machine() {
    sed -n 's/^model name[^:]*: */processor: /p' /proc/cpuinfo 2>/dev/null | head -n 1
    echo "cores: $(getconf _NPROCESSORS_ONLN 2>/dev/null || echo '?'), load at the start: $(cut -d' ' -f1 /proc/loadavg 2>/dev/null || echo '?')"
    echo "system: $(uname -s) $(uname -r | cut -d. -f1,2) $(uname -m), $(sed -n 's/^PRETTY_NAME="\(.*\)"/\1/p' /etc/os-release 2>/dev/null || true)"
    echo "built by: $BENCH_CC"
    "$HOLDWATER" --version | head -n 1
}

report() {
    echo "## Report of $(date -u +%Y-%m-%d)"
    echo
    machine | sed 's/^/* /'
    echo "* others: ${versions#, }; one thread each"
    [ -z "$absent" ] || echo "* absent: ${absent#, }"
    echo "* medians of $ROUNDS rounds in which the programs take turns; output discarded; user + system is time of the processor"
    echo
    # shellcheck disable=SC2086 # words
    sh "$here/bench_rows.sh" "$work" $peers
    echo
    sh "$here/bench_calcs.sh" "$work"
    echo
    sh "$here/bench_shapes.sh" "$work"
    echo
    sh "$here/bench_start.sh" "$work"
    echo
    sh "$here/bench_core.sh" "$work"
    echo
    sh "$here/bench_aims.sh" "$work"
}

rm -f "$work/whole"
{
    report
    touch "$work/whole"
} | tee "$work/report.md"
if [ ! -e "$work/whole" ]; then
    echo 'the bench ended before its end' >&2
    exit 1
fi
