#!/bin/sh
# What is printed for people fits a terminal of 79 columns: the map, the lists, each help, each example of a help.
# Usage: test_width.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
checks=0
cd "$scratch"

# narrow WORD...: what the program says to these words.
narrow() {
    "$program" "$@" >out.txt 2>err.txt || true
    [ -s out.txt ] || { echo "nothing printed: $*" >&2; exit 1; }
    if awk 'length > 79' out.txt | grep .; then
        echo "wider than 79 columns: $*" >&2
        exit 1
    fi
    checks=$((checks + 1))
}

narrow
for list in units sources cautions --help; do
    narrow $list
done
for name in asking log tanks $("$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p'); do
    narrow help "$name"
    [ "$(wc -l <out.txt)" -le 48 ] || { echo "over two screens: help $name" >&2; exit 1; }
done
while read -r example; do
    # shellcheck disable=SC2086
    narrow $example
    case $example in
    *:*) ;; # a sweep has no working
    *)
        # shellcheck disable=SC2086
        narrow $example --work
        ;;
    esac
done <<EOF
$(sh "$tests/help_examples.sh" "$program")
EOF
# Long words and long numbers: a set of all medicines, a value in its own unit out of a tank's file with its uncertainty.
narrow ammonia --tan 0.6 --ph 8 --temp 25 --salinity 34 \
    --medicine copper-ionic,copper-amine,copper-chelated,dye,formalin,antibiotic,binder,other
printf 'tank,alkalinity\na,115.25mgCaCO3/L+-7%%\n' >tanks.csv
narrow blend --tank a --tanks tanks.csv --volume 75L --share 20% --ph 8.1 --temp 25 --salinity 34 --new-ph 8.2 \
    --new-temp 25 --new-salinity 30
narrow ammonia --tan 3+-0.5 --ph 8.4:9.4:0.01 --temp 26 --salinity 34 --long-limit 1 --only free
for plan in copper dye watch; do
    narrow calendar --plan $plan --from 2031-04-01 --tank birch --added 2031-04-11 --when 2031-04-12
    narrow calendar --plan $plan --from 2031-04-01 --full
done
[ "$checks" -gt 100 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
