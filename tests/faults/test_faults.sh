#!/bin/sh
# test_faults.sh BUILD - every call of the system that the program makes fails once, at each place
# where it makes one (see shim.c), for questions of every kind.
#
# Never a crash. Status 0 only where all was printed and logged, byte for byte as without the fault;
# else a message. A part of a read or a write, and a call that a signal interrupts, change nothing.
# A record of a logbook is whole or absent.
set -eu
. tests/scratch.sh

program=$build/holdwater
shim=$build/shim.so
cd "$scratch"
runs=0

fail() {
    echo "test_faults: $1: $(tr '\n' ' ' <words)" >&2
    exit 1
}

# --- What is asked

awk 'BEGIN { print "tan,ph,temp,salinity"; for (i = 0; i < 15000; i++)
    printf "%.2f,%.2f,%.1f,%d\n", i % 400 / 100, 7.5 + i % 90 / 100, 20 + i % 80 / 10, 30 + i % 5 }' >rows.csv
printf '%s\n' tank,volume_L,temp_degC,salinity_g_kg birch,110,25.5,33.0 >tanks.csv
printf '%s\n' when,tank,tan 2031-03-05,birch,0.2 2031-03-06,birch,0.3 2031-03-07,birch,0.35 >readings.csv
printf '%s\n' 'day,act' >plan.csv
log='oxygen --temp 25.5 --salinity 33 --when 2031-03-05 --format value --log log.csv'

# questions: one a line, those with a logbook too, which begins as old.csv where that is there.
questions() {
    cat <<END
nitrite --nitrite 0.5 --salinity 33 --format value
ammonia --tan 0.6 --ph 8.2 --temp 25 --salinity 33 --full
ammonia --tan 0.6 --ph 8.2 --temp 25 --salinity 33 --format json --work
ammonia --tan 0.6 --ph 8:8.4:0.1 --temp 25 --salinity 33 --format svg
ammonia --tan 0.6 --ph 8.2 --tank birch --tanks tanks.csv --format csv
ammonia --rows rows.csv --only free
trend --rows readings.csv --of tan --when 2031-03-08 --format json
calendar --plan dye --from 2031-03-05 --when 2031-03-05 --format ics
units
$log
$log --note again
END
}

# --- One run

# ask NAME: the words of the file `words`, under $FAULT; what is printed goes to NAME.out and .err.
ask() {
    rm -f log.csv
    ! grep -q again words || cp old.csv log.csv
    status=0
    # shellcheck disable=SC2046
    LD_PRELOAD=$shim FAULT=$2 FAULT_COUNT=count "$program" $(cat words) >"$1.out" 2>"$1.err" </dev/null || status=$?
    ! [ -f log.csv ] || mv log.csv "$1.log"
}

# judge FAULT HARM: what came of a run; without harm nothing may differ.
judge() {
    runs=$((runs + 1))
    [ $status -le 3 ] || fail "$1: status $status"
    if [ $status -eq 0 ]; then
        cmp -s want.out got.out && cmp -s want.err got.err || fail "$1: status 0, and not all is printed"
        ! [ -f want.log ] || cmp -s want.log got.log || fail "$1: status 0, and not all is logged"
    elif [ "$2" = harmless ]; then
        fail "$1: status $status"
    elif ! [ -s got.err ] && [ "${1%%:*}" != write ]; then
        fail "$1: status $status without a message"
    fi
    if [ -s got.log ]; then
        [ -z "$(tail -c 1 got.log)" ] || fail "$1: the logbook ends in half a line"
        ! grep -vxFq -f want.log got.log || fail "$1: a record that is not whole"
    fi
}

# once FAULT HARM
once() {
    rm -f got.*
    ask got "$1"
    judge "$1" "$2"
}

# everywhere CALL WHAT HARM: at each call of that kind that this question makes.
everywhere() {
    ask none "$1:0:$2"
    n=$(cat count)
    for i in $(seq "$n"); do
        once "$1:$i:$2" "$3"
    done
}

# --- All of them

# Where the kernel takes no filter nothing can be said.
echo units >words
ask none write:0:EIO
if [ $status -eq 126 ]; then
    cat none.err
    echo 'skipped: calls that fail, as the kernel takes no filter of them'
    exit 0
fi
# shellcheck disable=SC2086
"$program" $log >/dev/null 2>&1
mv log.csv old.csv

questions >all
while read -r words; do
    printf '%s\n' "$words" >words
    rm -f want.*
    ask want write:0:EIO
    [ $status -eq 0 ] || fail "status $status without a fault"
    once read:all:short harmless
    once read:all:EINTR harmless
    once write:all:short harmless
    once fcntl:all:EINTR harmless
    for error in ENOSPC EIO EINTR torn; do
        everywhere write $error harm
    done
    for i in 1 2; do
        once "write:$i+:ENOSPC" harm
    done
    everywhere read EIO harm
    everywhere openat EMFILE harm
    everywhere fcntl ENOLCK harm
    everywhere fsync EIO harm
    everywhere close EIO harm
    everywhere malloc ENOMEM harm
done <all
[ "$runs" -gt 200 ] || fail "only $runs runs"
echo "$runs checks passed"
