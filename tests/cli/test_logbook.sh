#!/bin/sh
# The recipes of docs/logbook.md, with the real programs, and the whole log of the demo in them: named
# columns, as many records as were written, one and the same cell in each.
# Usage: test_logbook.sh BUILD
set -eu
. tests/scratch.sh
for tool in sqlite3 mlr; do
    command -v $tool >/dev/null || { echo "skipped: recipes of the logbook, as there is no $tool"; exit 0; }
done
root=$(cd "$(dirname "$0")/../.." && pwd)

HOLDWATER=$build/holdwater HOLDWATER_RUN=${HOLDWATER_RUN:-} HOLDWATER_DATA=$root/data "$build/tests/cli/run_cases" "$root/docs/logbook.md"

cd "$scratch"
HOLDWATER=$build/holdwater HOLDWATER_DATA=$root/data sh "$root/data/demo/demo.sh" >demo.txt 2>demo.err
sed -n '/^when,tank,calculation,/,$p' demo.txt >log.csv
records=$(($(wc -l <log.csv) - 1))
[ "$records" -gt 10 ]

# Both read the same records under the same names.
mlr --icsv --ojson cat log.csv >miller.json
columns='"when", tank, calculation, inputs, results, cautions, note'
sqlite3 :memory: '.import --csv log.csv log' '.mode json' "select $columns from log" >sqlite.json
for rows in miller.json sqlite.json; do
    mlr --ijson --ocsv cat "$rows" >again.csv
    [ "$(head -n 1 again.csv)" = 'when,tank,calculation,inputs,results,cautions,note' ]
    [ "$(mlr --icsv --ojson count again.csv | tr -dc 0-9)" -eq "$records" ]
    cmp log.csv again.csv
done

# Each result taken apart is a number.
# shellcheck disable=SC2016 # $results is a field
mlr --icsv --ojsonl put -q 'for (entry in splitax($results, "; ")) {
    emit {"value": sub(sub(entry, "^[a-z0-9_]*=", ""), " .*", "")}
}' log.csv >values.jsonl
sed -n 's/.*"value": "*\([^"}]*\).*/\1/p' values.jsonl >values.txt
[ "$(wc -l <values.txt)" -ge "$records" ]
if grep -vxE '[-]?[0-9.]+(e[-+][0-9]+)?|yes|no|withheld|refused' values.txt; then
    echo 'a result in the log of the demo is no number' >&2
    exit 1
fi
echo "8 checks passed"
