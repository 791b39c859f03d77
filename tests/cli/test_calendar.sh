#!/bin/sh
# Calendars for a phone: the checker finds each fault that it is there for, and none in what the program writes; entries keep
# their UIDs, and no two share one; a plan comes back as it went out, whatever a spreadsheet made of it.
# Usage: test_calendar.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
tests=$(cd "$(dirname "$0")" && pwd)
plans=$PWD/data/plans
cd "$scratch"
LC_ALL=C
HOME=$scratch
export LC_ALL HOME
unset HOLDWATER_TANKS XDG_CONFIG_HOME SOURCE_DATE_EPOCH || true
checks=0

fail() {
    echo "test_calendar: $1" >&2
    exit 1
}

# --- The checker

found=0
for awk in mawk 'gawk --posix' 'busybox awk' ${AWK:+"$AWK"}; do
    command -v "${awk%% *}" >/dev/null || { echo "skipped: $awk is not here"; continue; }
    found=$((found + 1))
    points=
    for file in "$tests"/ics/*.ics; do
        name=${file##*/}
        status=0
        $awk -f "$tests/check_ics.awk" "$file" >out.txt || status=$?
        case $name in
        good*) [ $status -eq 0 ] && [ ! -s out.txt ] || fail "$awk: $name: $(cat out.txt)" ;;
        *)
            point=${name%%-*}
            point=${point#0}
            [ $status -eq 1 ] || fail "$awk: $name: status $status"
            [ -s out.txt ] && ! grep -v "^point $point: " out.txt || fail "$awk: $name: $(cat out.txt)"
            points="$points $point"
            ;;
        esac
        checks=$((checks + 1))
    done
    for point in 1 2 3 4 5 6 7 8 9 10 11; do
        case "$points " in
        *" $point "*) ;;
        *) fail "no file has a fault of point $point" ;;
        esac
    done
done
[ $found -gt 0 ] || fail 'no awk at all'

# --- What the program writes

# written NAME WORD...: NAME.ics and NAME.csv are the answer to these words, and NAME.ics is good: as many entries as records.
written() {
    name=$1
    shift
    "$program" calendar "$@" --format csv >"$name.csv" || fail "$*"
    "$program" calendar "$@" --format ics >"$name.ics" || fail "$*"
    ${AWK:-awk} -f "$tests/check_ics.awk" "$name.ics" >out.txt || fail "$*: $(cat out.txt)"
    "$program" calendar "$@" --format ics | cmp - "$name.ics" || fail "other bytes at the second time: $*"
    [ "$(grep -c '^BEGIN:VEVENT' "$name.ics")" -eq $(($(wc -l <"$name.csv") - 1)) ] || fail "entries and records: $*"
    ${AWK:-awk} '/^[ \t]/ { line = line substr($0, 2); next } { print line; line = $0 } END { print line }' "$name.ics" |
        tr -d '\r' >"$name.lines"
    # dates in the order of the table
    sed -n 's/^DTSTART;VALUE=DATE:\(....\)\(..\)\(..\)$/\1-\2-\3/p' "$name.lines" >"$name.dates"
    tail -n +2 "$name.csv" | cut -d, -f1 | cmp - "$name.dates" || fail "dates: $*"
    sort -c "$name.dates" || fail "not in order: $*"
    sed -n 's/^UID://p' "$name.lines" | sort >"$name.uids"
    checks=$((checks + 6))
}

# apart A B: no UID of A is one of B.
apart() {
    [ -z "$(comm -12 "$1.uids" "$2.uids")" ] || fail "$1 and $2 share a UID"
    checks=$((checks + 1))
}

for plan in copper dye watch; do
    written $plan --plan $plan --from 2031-04-01 --tank birch
    written $plan-alone --plan $plan --from 2031-04-01
    written $plan-cedar --plan $plan --from 2031-04-01 --tank cedar
    written $plan-later --plan $plan --from 2031-04-02 --tank birch
    apart $plan $plan-cedar
    apart $plan $plan-later
    apart $plan $plan-alone
    # made anew for a fish, it moves every entry that was to come and leaves none behind
    written $plan-added --plan $plan --from 2031-04-01 --tank birch --added 2031-04-11
    [ -z "$(comm -23 $plan.uids $plan-added.uids)" ] || fail "an entry of $plan stays behind"
    written $plan-twice --plan $plan --from 2031-04-01 --tank birch --added 2031-04-20 --added 2031-04-11
    [ -z "$(comm -23 $plan-added.uids $plan-twice.uids)" ] || fail "an entry of $plan stays behind"
    # the plan is data/plans, and comes back
    "$program" calendar --plan $plan --format plan >given.tsv
    cmp given.tsv "$plans/$plan.tsv" || fail "the plan $plan is not that of data/plans"
    written back --plan given.tsv --from 2031-04-01 --tank birch
    cmp back.csv $plan.csv || fail "$plan does not come back"
    cmp back.uids $plan.uids || fail "$plan does not come back with its UIDs"
    "$program" calendar --plan ./given.tsv --format plan >again.tsv
    "$program" calendar --plan again.tsv --format plan | cmp - again.tsv || fail "a plan changes when it is printed"
    written back --plan again.tsv --from 2031-04-01 --tank birch
    cmp back.csv $plan.csv || fail "$plan as it is printed is another plan"
    checks=$((checks + 8))
done

# What editors and spreadsheets make of it: line ends, a byte order mark, no end of the last line, commas with quotes,
# semicolons, columns in another order, blank lines, cells to the right.
tab=$(printf '\t')
grep -v '^#' "$plans/copper.tsv" >plain.tsv
sed 's/$/\r/' plain.tsv >crlf.tsv
{ printf '\357\273\277'; cat "$plans/copper.tsv"; } >mark.tsv
printf %s "$(cat plain.tsv)" >unended.tsv
sed "s/\"/\"\"/g; s/[^$tab]*/\"&\"/g; s/$tab/,/g; s/\$/\\r/" "$plans/copper.tsv" >quoted.csv
sed 's/,/./g; s/\t/,/g' plain.tsv | sed '1s/$/,,/; 2,$s/$/,,/' >wide.csv
sed 's/\t/;/g' plain.tsv >semicolon.csv
awk -F '\t' '{ print $6 "\t" $5 "\t" $2 "\t" $4 "\t" $3 "\t" $1; print "" }' plain.tsv >order.tsv
for file in crlf.tsv mark.tsv unended.tsv quoted.csv semicolon.csv order.tsv; do
    written back --plan $file --from 2031-04-01 --tank birch
    cmp back.csv copper.csv || fail "$file is read as another plan"
done
written padded --plan wide.csv --from 2031-04-01 --tank birch
tr -d ',."' <copper.csv >a.txt
tr -d ',."' <padded.csv >b.txt
cmp a.txt b.txt || fail 'wide.csv is read as another plan'
"$program" calendar --plan - --from 2031-04-01 --tank birch --format csv <plain.tsv | cmp - copper.csv ||
    fail 'standard input is read as another plan'

# Names that are hard on a calendar: what is escaped, what is folded within a character, what is long, what differs little.
long=$(printf '\303\244%.0s' 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27 28 29 30 31 32 33 34 35 36 37 38 39 40)
printf 'day\tact\tevery\tuntil\tclass\tsource\n0\tlook; wait, \\ then: "go" =1+1\t2\t40\tvet\ta, b; c\\\n1\t%s%s\xe2\x82\xac\n' \
    "$(echo "$long" | cut -c1-76)" "$(printf '\360\237\220\237')" | sed '3s/$/\t-\t-\town\t-/' >hard.tsv
n=0
for tank in 'a,b' 'a;b' 'a\b' 'a b' 'a+b' 'a%2Cb' 'a.b' 'a:b' '=a' "$long" b "$(printf '\360\237\220\237 one')"; do
    n=$((n + 1))
    written hard-$n --plan hard.tsv --from 2031-12-30 --tank "$tank"
    k=1
    while [ $k -lt $n ]; do
        apart hard-$n hard-$k
        k=$((k + 1))
    done
done
grep -qF 'SUMMARY:a\,b: look\; wait\, \\ then: "go" =1+1' hard-1.lines || fail 'commas, semicolons and backslashes'
grep -qF 'SUMMARY:a\\b: look' hard-3.lines || fail 'a backslash'

# The time of the entries: the plan's own day, the environment, --when.
stamps() {
    sed -n 's/^DTSTAMP://p' | tr -d '\r' | sort -u
}
ask="$program calendar --plan watch --from 2031-04-01 --format ics"
[ "$($ask | stamps)" = 20310401T000000Z ] || fail 'no midnight of day 0'
[ "$($ask --added 2031-04-11 | stamps)" = 20310411T000000Z ] || fail 'no midnight of the new day 0'
[ "$(SOURCE_DATE_EPOCH=1930000000 $ask | stamps)" = 20310227T230640Z ] || fail 'not of SOURCE_DATE_EPOCH'
[ "$(SOURCE_DATE_EPOCH='' $ask | stamps)" = 20310401T000000Z ] || fail 'an empty SOURCE_DATE_EPOCH'
[ "$(SOURCE_DATE_EPOCH=1930000000 $ask --when 2031-03-05T00:15:30+01:30 | stamps)" = 20310304T224530Z ] ||
    fail 'not of --when'
checks=$((checks + 9))

# The largest plan, and one that is larger.
{ cat "$plans/copper.tsv"; awk 'BEGIN { for (i = 0; i < 30000; i++) print "# a comment of a keeper who explains it all" }'; } |
    head -c 1048576 >large.tsv
written large --plan large.tsv --from 2031-04-01 --tank birch
cmp large.csv copper.csv || fail 'a plan of 1 MiB'
echo >>large.tsv
if "$program" calendar --plan large.tsv --from 2031-04-01 2>err.txt; then
    fail 'a plan over 1 MiB'
fi
grep -qx 'holdwater: large.tsv is too large for a plan (over 1 MiB)' err.txt || fail "$(cat err.txt)"

# Every fault of a header or an act at once is one message and no output.
awk 'BEGIN { print "day\tact"; for (i = 0; i < 200; i++) print i "\tact " i }' >many.tsv
"$program" calendar --plan many.tsv --from 2031-04-01 --format csv >many.csv
[ "$(wc -l <many.csv)" -eq 201 ] || fail '200 acts'
echo "1${tab}act 200" >>many.tsv
if "$program" calendar --plan many.tsv --from 2031-04-01 2>err.txt; then
    fail '201 acts'
fi
grep -qx 'holdwater: many.tsv line 202: a plan has at most 200 acts' err.txt || fail "$(cat err.txt)"
checks=$((checks + 5))
[ "$checks" -gt 200 ] || fail "only $checks checks"
echo "$checks checks passed"
