#!/bin/sh
# same_answers.sh PROGRAM OTHER... - builds for several machines answer with the same bytes: the demo,
# uncertainties in json to the last digit, rows.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
checks=0
failed=0

answers() {
    HOLDWATER=$1 HOLDWATER_DATA=$root/data sh "$root/data/demo/demo.sh"
    "$1" ammonia --tan 0.6+-0.1 --ph 8.15+-0.1 --temp 25+-1 --salinity 34+-1 --format json
    "$1" ammonia --tan 0.6+-0.125 --ph 7.9+-0.2 --temp 77F+-2F --salinity 2+-0.5 --format json
    "$1" volume --length 60+-0.5cm --width 40+-0.5cm --depth 31+-1cm --format json
    "$1" dose --volume 110+-3L --kind dye --biofilter no --target 2 --strength '1+-0.05%wv' --format json
    "$1" salinity --of sg --reading 1.0235+-0.0005 --temp 25+-1 --reference unknown --format json
    "$1" ammonia --rows "$root/data/demo/spread.csv" --spread --format jsonl
    "$1" ammonia --rows "$root/data/demo/readings.csv" --format csv --digits 17
}

absolute() {
    case $1 in
    /*) echo "$1" ;;
    *) echo "$PWD/$1" ;;
    esac
}

first=$(absolute "$1")
shift
(cd "$work" && answers "$first" >want.txt 2>&1) || true
[ "$(wc -l <"$work/want.txt")" -gt 100 ]
for other in "$@"; do
    other=$(absolute "$other")
    (cd "$work" && answers "$other" >got.txt 2>&1) || true
    checks=$((checks + 1))
    if ! cmp -s "$work/want.txt" "$work/got.txt"; then
        echo "other bytes: $other" >&2
        diff "$work/want.txt" "$work/got.txt" | head -n 20 >&2
        failed=1
    fi
done
[ $failed -eq 0 ]
echo "$checks checks passed: builds with the same bytes"
