#!/bin/sh
# An answer fits one screen: the first example of every help, each command of the demo, of the guide's table of jobs, and
# of screens.tsv, have at most 23 lines of 79 columns, or the count listed there when three cautions or more are raised;
# each result has one line; a caution has at most 156 characters; never: and mind: hold whole sentences. A command of the
# table of jobs says what stands beside it.
# Usage: test_screen.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
root=$(pwd)
cd "$scratch"
checks=0

fail() {
    echo "$1: $2" >&2
    cat answer.txt >&2
    exit 1
}

# judge MOST COMMAND: answer.txt is a screen.
judge() {
    case $2 in
    *:[0-9]* | *+-*) table=1 ;; # a table of its own, and a line for low and high
    *) table=0 ;;
    esac
    awk -v most="$1" -v table=$table -f "$tests/screen.awk" answer.txt >wrong.txt
    read -r wrong <wrong.txt && fail "$2" "$wrong"
    checks=$((checks + 5))
}

# What the examples of trend read: a week of birch, in which ammonia creeps.
{
    echo when,tank,tan,copper
    for day in 1 2 3 4 5 6 7; do
        echo "2031-03-0${day}T08:00,birch,0.$((day + 1))$((day % 3)),0.1$((5 + day % 4))"
    done
} >readings.csv
cp readings.csv levels.csv

# Each help's first example of one question.
"$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' >names.txt
while read -r name; do
    "$program" help "$name" | awk '
        /^    holdwater / { if (line) exit; line = substr($0, 15); next }
        line && /^        / { sub(/ \\$/, "", line); line = line " " substr($0, 9); next }
        line { exit } END { print line }' >command.txt
    command=$(cat command.txt)
    # shellcheck disable=SC2086
    "$program" $command >answer.txt
    judge 23 "$command"
done <names.txt
[ -s names.txt ]

# The demo.
HOLDWATER=$program HOLDWATER_DATA=$root/data sh "$root/data/demo/demo.sh" >demo.txt 2>/dev/null
awk '/^\$ holdwater/ { n++; print substr($0, 13) > ("demo-" n ".command"); out = "demo-" n ".answer"; printf "" > out; next }
     /^(#|==)/ { out = "" } out { print > out }' demo.txt
for answer in demo-*.answer; do
    command=$(cat "${answer%.answer}.command")
    case $command in
    *--rows* | *--format* | *--work*) continue ;; # tables, and what was asked for in full
    esac
    grep -v '^(exit status\|^$' "$answer" >answer.txt || true
    ! grep -q '^holdwater: ' answer.txt || continue # asked wrongly on purpose
    most=23
    [ "$(grep -Ec '^([a-zA-Z] )?CAUTION' answer.txt)" -lt 3 ] || most=26
    judge $most "demo: $command"
done

# The table of jobs: | stage | question | `command` | `what it says` |
# shellcheck disable=SC2016
sed -n 's/^| [a-z]* | [^|]* | `holdwater \([^`]*\)` | `\([^`]*\)` |$/\1|\2/p' "$root/docs/guide.md" >jobs.txt
while IFS='|' read -r command says; do
    # shellcheck disable=SC2086
    "$program" ${command% >>*} >answer.txt
    case $command in
    *--format*) ;; # a line for a file
    *) judge 23 "guide: $command" ;;
    esac
    tr -s ' \n' '  ' <answer.txt | grep -qF -- "$says" || fail "guide: $command" "does not say: $says"
    checks=$((checks + 1))
done <jobs.txt
[ "$(wc -l <jobs.txt)" -eq 21 ] || { echo 'the table of jobs has not 21 commands' >&2; exit 1; }

tab=$(printf '\t')
grep -v '^#\|^lines' "$tests/screens.tsv" >screens.txt
while IFS=$tab read -r most command; do
    # shellcheck disable=SC2086
    "$program" $command >answer.txt 2>error.txt || [ $? -eq 3 ]
    [ ! -s error.txt ] || fail "$command" "$(cat error.txt)"
    judge "$most" "$command"
    echo "${command%% *}" >>asked.txt
done <screens.txt
while read -r name; do
    grep -qx "$name" asked.txt || fail "$name" 'no command in screens.tsv'
done <names.txt
echo "$checks checks passed"
