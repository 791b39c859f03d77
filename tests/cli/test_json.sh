#!/bin/sh
# What the program calls JSON is read by jq, and holds what every answer holds.
# Usage: test_json.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
command -v jq >/dev/null || { echo "skipped: JSON, as there is no jq"; exit 0; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
checks=0
cd "$work"
cat >answer.jq <<'JQ'
(.program == "holdwater") and (.version | type == "string") and (.calculation | type == "string")
and (.status | type == "number") and (.inputs | type == "object") and (.results | length > 0)
and ([.inputs[] | has("value") and has("unit") and has("from")] | all)
and ([.results[] | has("value") and has("unit") and (.value | type == "number" or . == null)] | all)
and ([.cautions[] | (.code | test("^[a-z0-9-]+$")) and (.text | length > 0)] | all)
and ([.cautions[].code] | index("ask-vet") != null)
and (.sources | length > 0)
JQ

# read_by STATUS WORD...: the answer to these words, in both forms.
read_by() {
    wanted=$1
    shift
    for form in json jsonl; do
        status=0
        "$program" "$@" --format "$form" >out.json 2>err.txt || status=$?
        [ "$status" -eq "$wanted" ] || { echo "status $status, not $wanted: $*" >&2; exit 1; }
        jq -e -s '(if (.[0] | type) == "array" then .[0] else . end) | length > 0' out.json >/dev/null ||
            { echo "not read as JSON: $* --format $form" >&2; exit 1; }
        bad=$(jq 'if type == "array" then .[] else . end' out.json | jq -f answer.jq | grep -vc true || true)
        [ "$bad" -eq 0 ] || { echo "something is missing: $* --format $form" >&2; exit 1; }
        checks=$((checks + 2))
    done
}

while read -r example; do
    status=0
    # shellcheck disable=SC2086
    "$program" $example >/dev/null 2>&1 || status=$?
    # shellcheck disable=SC2086
    read_by "$status" $example
done <<EOF
$(sh "$tests/help_examples.sh" "$program")
EOF
# without an answer, withheld, swept with gaps
read_by 1 change --volume 75L --take 80L --now 0.5
read_by 3 challenge --volume 75L --fish yes
read_by 1 change --volume 75L --take 60L:90L:10L --now 0.5
[ "$checks" -gt 100 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
