#!/bin/sh
# What is withheld is in no output: each command of the cases that ends with status 3 is asked again in every format, with
# all that there is: no result may have a number.
# Usage: test_withheld.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
cd "$scratch"
checks=0

fail() {
    echo "$command: $1" >&2
    cat out.txt >&2
    exit 1
}

# again WORD...: the command with these words too; status 3.
again() {
    status=0
    # shellcheck disable=SC2086
    "$program" $command "$@" >out.txt 2>err.txt || status=$?
    [ "$status" -eq 3 ] || fail "status $status with $*"
    checks=$((checks + 1))
}

# no_results WHERE: right behind the name stands why there are none.
no_results() {
    sed -n 2p out.txt | grep -q '^WITHHELD ' || fail "results in $1"
}

# One question in one line, withheld, without what the shell would read or a format of its own.
cat "$tests"/*.txt | awk '
    /^\$ / { line = /^\$ holdwater [a-z]+ / && !/[|<>"\x27\\;]|--rows|--tank|--solve|:/ ? substr($0, 13) : "" }
    /^= 3$/ && line != "" { gsub(/ --(format|only|when|digits) [^ ]*| --(work|full)/, "", line); print line; line = "" }' |
    sort -u >commands.txt
[ "$(wc -l <commands.txt)" -ge 20 ] || { echo "only $(wc -l <commands.txt) commands" >&2; exit 1; }

while read -r command; do
    calculation=${command%% *}
    again
    grep -q '^WITHHELD ' out.txt || fail 'the reason is not told'
    no_results text
    again --full
    no_results 'full text'
    again --work
    no_results 'text with working'
    ! grep -q '^working' out.txt || fail 'a working'
    again --format json
    awk '/"results"/ { on = 1; next } on && /^  }/ { exit bad } on && !/"value": null/ { bad = 1 } END { exit bad }' out.txt ||
        fail 'a result in json'
    ! grep -q '"steps": \[\|"working"' out.txt || fail 'steps or a working in json'
    again --format value
    ! grep -q '[0-9]' out.txt || fail 'a value'
    again --format log --when 2031-03-05
    grep -q ',status=withheld,' out.txt || fail 'no status in the log'
    ! grep -q 'status=withheld[^,]\|=[^,]*,status=withheld; ' out.txt || fail 'results in the log'
    # the columns of the results in csv: those that --only names
    names=$("$program" help "$calculation" | tr '\n' ' ' | sed 's/  */ /g; s/.*results: //; s/ more: .*//; s/,/\n/g' |
        sed 's/^ *//; s/ .*//' | tr '\n' ',' | sed 's/,$//')
    again --format csv --only "$names"
    awk -F, -v n="$(echo "$names" | tr ',' '\n' | wc -l)" 'NR == 2 { for (i = NF - n; i < NF; i++) if ($i != "") exit 1 }' out.txt ||
        fail 'a result in csv'
    again --format value --only "$names"
    ! grep -q '[0-9]' out.txt || fail 'values'
done <commands.txt
echo "$checks checks passed"
