#!/bin/sh
# A logbook under stress: many writers at once, a full disk, files that are none, a writer that is killed.
# Usage: test_log.sh BUILD. Each of eight writers writes LOG_RECORDS records, 60 without it.
set -eu
program=$(cd "$1" && pwd)/holdwater
work=$(mktemp -d) # another user must come in: not below the build
trap 'rm -rf "$work"' EXIT
cd "$work"
checks=0
header=when,tank,calculation,inputs,results,cautions,note

ask() {
    ${HOLDWATER_RUN:-} "$program" oxygen --temp 25.5 --salinity 33 --when 2031-03-05 --format value "$@"
}

# holds: one more check stood.
holds() {
    checks=$((checks + 1))
}

# same WANTED GOT WHAT
same() {
    [ "$1" = "$2" ] || { echo "$3: '$2', not '$1'" >&2; exit 1; }
    holds
}

# Eight shells at once, into a book that none of them has seen: one header, every record whole.
writers=8
each=${LOG_RECORDS:-60}
for shell in $(seq $writers); do
    (for record in $(seq "$each"); do
        ask --log together.csv --note "shell $shell record $record" >/dev/null 2>&1
    done) &
done
wait
same $((writers * each + 1)) "$(wc -l <together.csv)" 'lines of eight writers'
same 1 "$(grep -c "^$header\$" together.csv)" 'headers of eight writers'
same "$header" "$(head -n 1 together.csv)" 'the first line'
record=$(sed -n 2p together.csv | sed 's/,shell.*//')
tail -n +2 together.csv | sed 's/^.*,shell \([0-9]*\) record \([0-9]*\)$/\1 \2/' | LC_ALL=C sort >got.txt
for shell in $(seq $writers); do
    seq "$each" | sed "s/^/$shell /"
done | LC_ALL=C sort >want.txt
cmp want.txt got.txt
holds
same $((writers * each)) "$(grep -c "^$record,shell" together.csv)" 'records that are whole'

# A writer that is killed between two records has lost none that it had acknowledged.
: >acknowledged.txt
(while ask --log killed.csv >/dev/null 2>&1; do echo one; done >>acknowledged.txt) &
writer=$!
until [ "$(wc -l <acknowledged.txt)" -ge 20 ]; do sleep 0.05; done
kill -9 $writer
wait $writer 2>/dev/null || true
sleep 0.2
acknowledged=$(wc -l <acknowledged.txt)
[ "$(grep -c '^2031-03-05,' killed.csv)" -ge "$acknowledged" ]
holds

# A disk that takes no more: the answer is there, the failure is told, the next record starts a line.
(
    trap '' XFSZ
    ulimit -f 1
    status=0
    while [ $status -eq 0 ]; do
        ask --log full.csv >answer.txt 2>message.txt || status=$?
    done
    echo $status >status.txt
)
same 2 "$(cat status.txt)" 'status of a full disk'
[ -s answer.txt ] && grep -q 'could not write to the logbook full.csv: File too large' message.txt
holds
# what found no room is taken away again: the file ends with a whole record
same '' "$(tail -c 1 full.csv)" 'the last byte of a full file, a line feed'
before=$(wc -l <full.csv)
ask --log full.csv >/dev/null 2>&1
same 2031-03-05, "$(tail -n 1 full.csv | cut -c 1-11)" 'the record after a torn one'
[ "$(wc -l <full.csv)" -gt "$before" ]
holds

# What is no file of one's own: the answer is there, the message says what is wrong, and nothing hangs.
mkdir folder
mkfifo pipe
refused() {
    status=0
    ask --log "$1" >answer.txt 2>message.txt || status=$?
    same 2 $status "status of $1"
    grep -q "$2" message.txt || { cat message.txt >&2; exit 1; }
    [ -s answer.txt ]
    holds
}
refused folder 'could not write to the logbook folder: Is a directory'
refused pipe 'pipe keeps nothing: a logbook is a file'
refused /dev/null 'keeps nothing: a logbook is a file'
refused none/log.csv 'could not write to the logbook none/log.csv: No such file or directory'
if [ "$(id -u)" -ne 0 ] || command -v setpriv >/dev/null; then
    echo "$header" >locked.csv
    chmod 444 locked.csv
    chmod 755 .
    lower='' # the superuser may write anywhere
    [ "$(id -u)" -ne 0 ] || lower='setpriv --reuid 65534 --regid 65534 --clear-groups'
    status=0
    # shellcheck disable=SC2086
    $lower ${HOLDWATER_RUN:-} "$program" oxygen --temp 25.5 --salinity 33 --format value --log locked.csv \
        >answer.txt 2>message.txt || status=$?
    same 2 $status 'status of a file that is read only'
    grep -q 'could not write to the logbook locked.csv: Permission denied' message.txt
    same "$header" "$(cat locked.csv)" 'a file that is read only'
fi

echo "$checks checks passed"
