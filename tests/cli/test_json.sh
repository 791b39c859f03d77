#!/bin/sh
# What the program calls JSON is read by jq, and holds what every answer holds.
# Usage: test_json.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
command -v jq >/dev/null || { echo "skipped: JSON, as there is no jq"; exit 0; }
checks=0
cd "$scratch"
asked=0
cat >files.jq <<'JQ'
def answer:
(.program == "holdwater") and (.version | type == "string") and (.calculation | type == "string")
and (.status | type == "number") and (.inputs | type == "object") and (.results | length > 0)
and ([.inputs[] | has("value") and has("unit") and has("from")] | all)
and ([.results[] | has("value") and has("unit") and (.value | type == "number" or . == null)] | all)
and ([.cautions[] | (.code | test("^[a-z0-9-]+$")) and (.text | length > 0)] | all)
and ([.cautions[].code] | index("ask-vet") != null)
and (.sources | length > 0);
"\(input_filename) \(if type == "array" then length > 0 and all(.[]; answer) else answer end)"
JQ

# ask STATUS WORD...: keeps the answer to these words, in both forms.
ask() {
    wanted=$1
    shift
    asked=$((asked + 1))
    for form in json jsonl; do
        status=0
        "$program" "$@" --format "$form" >"$asked.$form" 2>err.txt || status=$?
        [ "$status" -eq "$wanted" ] || { echo "status $status, not $wanted: $*" >&2; exit 1; }
        checks=$((checks + 1))
    done
    echo "$*" >>asked.txt
}

# read_all FORM: every file of that form is read, has an answer, and nothing is missing from any answer.
read_all() {
    n=1
    while [ "$n" -le "$asked" ]; do
        echo "$n.$1"
        n=$((n + 1))
    done | xargs jq -r -f files.jq >"$1.txt" || { echo "not read as JSON: --format $1" >&2; exit 1; }
    bad=$(awk -v asked="$asked" '
        { split($1, name, "."); seen[name[1]] = 1 }
        $2 != "true" { wrong[name[1]] = 1 }
        END { for (n = 1; n <= asked; n++) if (!seen[n] || wrong[n]) print n }' "$1.txt")
    for n in $bad; do
        echo "something is missing: $(sed -n "${n}p" asked.txt) --format $1" >&2
    done
    [ -z "$bad" ] || exit 1
    checks=$((checks + asked))
}

while read -r example; do
    status=0
    # shellcheck disable=SC2086
    "$program" $example >/dev/null 2>&1 || status=$?
    # shellcheck disable=SC2086
    ask "$status" $example
done <<EOF
$(sh "$tests/help_examples.sh" "$program")
EOF
# without an answer, withheld, swept with gaps
ask 1 change --volume 75L --take 80L --now 0.5
ask 3 challenge --volume 75L --fish yes
ask 1 change --volume 75L --take 60L:90L:10L --now 0.5
read_all json
read_all jsonl
[ "$checks" -gt 100 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
