#!/bin/sh
# test_tables.sh BUILD - tables.awk: the same bytes under every awk, and every refusal.
set -eu

. tests/scratch.sh
root=$(pwd)
script=$root/src/tables/tables.awk
golden=$root/tests/tables
cd "$scratch"

LC_ALL=C
export LC_ALL
checks=0

fail() {
    echo "test_tables: $awk: $1" >&2
    exit 1
}

# The files of a good set, in FOLDER.
good() {
    mkdir -p "$1/plans"
    cp "$golden/references.tsv" "$golden/limits.tsv" "$golden/cautions.tsv" \
        "$golden/topics.tsv" "$golden/durations.tsv" "$1/"
    cp "$golden/plans/next-one.tsv" "$golden/plans/short.tsv" "$1/plans/"
}

# The names of those files.
all_of() {
    printf "$1/%s " references.tsv limits.tsv cautions.tsv topics.tsv durations.tsv \
        plans/next-one.tsv plans/short.tsv
}

# $awk may be two words.
tables() {
    kind=$1
    shift
    $awk -f "$script" -v kind="$kind" "$@"
}

# refused NAME LINE WHY: the set in bad/ is refused with bad/NAME:LINE: WHY and no output, whatever is to
# be made of it. What reads a set is one for both: the second is tried under the first awk alone.
refused() {
    for kind in $kinds; do
        # shellcheck disable=SC2046
        if tables $kind $(all_of bad) >out 2>err; then
            fail "accepted: $1:$2: $3"
        fi
        test ! -s out || fail "output in spite of: $1:$2: $3"
        {
            read -r said || said=''
            ! read -r more || fail "more than one message: $said, $more"
        } <err
        case $said in
        *"bad/$1:$2: $3"*) ;;
        *) fail "expected bad/$1:$2: $3, got $said" ;;
        esac
    done
    checks=$((checks + 1))
    rm -rf bad
    cp -R pristine bad
}

# edit NAME LINE TEXT: replaces a line of bad/NAME; TEXT as for printf %b.
edit() {
    printf '%b\n' "$3" >line
    sed -e "$2r line" -e "$2d" "bad/$1" >new
    mv new "bad/$1"
}

test_golden() {
    good set
    for kind in h c; do
        # shellcheck disable=SC2046
        tables $kind $(all_of set) >"got.$kind" 2>err ||
            fail "a good set: $(cat err)"
        cmp "got.$kind" "$golden/expected_tables.$kind.txt" >&2 || fail "other bytes, kind=$kind"
        tables $kind set/plans/next-one.tsv set/durations.tsv set/topics.tsv set/cautions.tsv \
            set/plans/short.tsv set/references.tsv set/limits.tsv >swapped ||
            fail 'a good set in another order'
        cmp "got.$kind" swapped >&2 || fail "the order of the files matters, kind=$kind"
        checks=$((checks + 2))
    done
    test ! -s err || fail "a message without need: $(cat err)"
}

test_refusals() {
    rm -rf bad
    good pristine
    cp -R pristine bad

    edit references.tsv 5 'epa1989\tread\ttext\twith a tab'
    refused references.tsv 5 '4 columns, not 3'
    edit limits.tsv 4 'salt-long\t0.035\tmg/L'
    refused limits.tsv 4 '3 columns, not 6'
    edit references.tsv 5 'epa1989\tread\t'
    refused references.tsv 5 'column text is empty'
    edit references.tsv 5 'epa1989\tread\t text'
    refused references.tsv 5 'column text begins or ends with a space'
    edit references.tsv 5 'epa1989\tread\ttext '
    refused references.tsv 5 'column text begins or ends with a space'
    edit references.tsv 5 'epa1989\tread\t20 \0302\0260C'
    refused references.tsv 5 'only printable ASCII and tabs are allowed'
    edit references.tsv 5 'epa1989\tread\ttext\r'
    refused references.tsv 5 'only printable ASCII and tabs are allowed'
    edit references.tsv 1 '# a comment: 20 \0302\0260C'
    refused references.tsv 1 'only printable ASCII and tabs are allowed'
    edit cautions.tsv 3 'warm\tblend\tcaution\t-\t-\t-\t-\ta \\\\n b'
    refused cautions.tsv 3 'a backslash is not allowed'
    edit references.tsv 5 'Epa1989\tread\ttext'
    refused references.tsv 5 '"Epa1989" is no key'
    edit references.tsv 5 'epa_1989\tread\ttext'
    refused references.tsv 5 '"epa_1989" is no key'
    edit references.tsv 5 '-epa\tread\ttext'
    refused references.tsv 5 '"-epa" is no key'
    edit references.tsv 5 'emerson1975\tread\ttext'
    refused references.tsv 5 'key "emerson1975" was given in line 4'
    edit cautions.tsv 3 'over-limit\tblend\tcaution\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 'code "over-limit" was given in line 2'
    edit references.tsv 5 'epa1989\tguessed\ttext'
    refused references.tsv 5 '"guessed" is no class'
    for value in 010 .5 5. 1e3 0x10 +1 1,5 nan --1; do
        edit limits.tsv 4 "salt-long\\t$value\\tmg/L\\t4-day\\tepa1989\\ttext"
        refused limits.tsv 4 "\"$value\" is no decimal number"
    done
    edit limits.tsv 4 'salt-long\t0.035\tmg/L\t4-day\tnobody\ttext'
    refused limits.tsv 4 'source "nobody" is no key of references.tsv'
    edit limits.tsv 4 'salt-long\t0.035\tmg/L\t4-day\t-\ttext'
    refused limits.tsv 4 'source "-" is no key of references.tsv'
    edit cautions.tsv 3 'warm\tblend\tcaution\t-\tnobody\t-\t-\ttext'
    refused cautions.tsv 3 'source "nobody" is no key of references.tsv'
    edit cautions.tsv 3 'warm\tblend\tloud\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 '"loud" is no effect'
    edit cautions.tsv 3 'warm\tblend?\tstanding\t-\t-\tfull\t-\ttext'
    refused cautions.tsv 3 '"blend?" in used_by: the effect is not always or ever'
    edit cautions.tsv 3 'warm\tblend+\tcaution\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 '"blend+" in used_by: the effect is not always or ever'
    edit cautions.tsv 3 'warm\tblend, bag\tcaution\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 '" bag" in used_by is no calculation'
    edit cautions.tsv 3 'warm\tblend,\tcaution\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 '"" in used_by is no calculation'
    edit cautions.tsv 3 'warm\tblend,bag,blend\tcaution\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 'used_by names blend twice'
    edit cautions.tsv 3 'warm\tblend\tcaution\tHeat\t-\t-\t-\ttext'
    refused cautions.tsv 3 '"Heat" is no fact'
    edit cautions.tsv 3 'warm\tblend\tcaution\theat\t-\t-\t-\ttext'
    refused cautions.tsv 3 'no other caution of the calculation tells the fact "heat"'
    edit cautions.tsv 4 'no-fish\tbag\twithheld\tlimit\t-\t-\t-\ttext' # told by others, never with it
    refused cautions.tsv 4 'no other caution of the calculation tells the fact "limit"'
    edit cautions.tsv 3 'warm\tblend\tcaution\t-\t-\tsoon\t-\ttext'
    refused cautions.tsv 3 '"soon" is no list'
    edit cautions.tsv 3 'warm\tblend\tcaution\t-\t-\tmind\tA text.\ttext'
    refused cautions.tsv 3 'standing notes have a list, others have -'
    edit cautions.tsv 3 'warm\tblend\tstanding\t-\t-\t-\t-\ttext'
    refused cautions.tsv 3 'standing notes have a list, others have -'
    edit cautions.tsv 3 'warm\tblend\tstanding\t-\t-\tmind\t-\ttext'
    refused cautions.tsv 3 'a standing note has a brief sentence, or the list full'
    edit cautions.tsv 3 'warm\tblend\talways\t-\t-\tfull\tA text.\ttext'
    refused cautions.tsv 3 'a standing note has a brief sentence, or the list full'
    edit cautions.tsv 3 'warm\tblend\tcaution\t-\t-\t-\tA text; another.\ttext'
    refused cautions.tsv 3 'a semicolon in a brief sentence'
    sixty=123456789.123456789.123456789.123456789.123456789.123456789.
    edit cautions.tsv 3 "warm\\tblend\\tstanding\\t-\\t-\\tmind\\t1$sixty\\ttext"
    refused cautions.tsv 3 'warm takes 61 characters in a text of one screen, and 60 are room for it'
    edit cautions.tsv 3 "warm\\tblend\\tstanding\\t-\\t-\\tmind\\tMeasure. 1$sixty\\ttext"
    refused cautions.tsv 3 'warm takes 61 characters in a text of one screen, and 60 are room for it'
    edit cautions.tsv 3 "warm\\tblend\\tstanding\\t-\\t-\\tmind\\t1$sixty Measure.\\ttext"
    refused cautions.tsv 3 'warm takes 61 characters in a text of one screen, and 60 are room for it'
    edit cautions.tsv 3 "warm\\tblend\\tstanding\\t-\\t-\\tnever\\t${sixty%?????}\\ttext"
    refused cautions.tsv 3 'warm takes 55 characters in a text of one screen, and 54 are room for it'
    edit cautions.tsv 3 "warm\\tblend\\tstanding\\t-\\t-\\tnever\\tPour it. Leave it.\\ttext"
    refused cautions.tsv 3 '2 sentences on the list never'
    edit cautions.tsv 3 "warm\\tblend\\tcaution\\t-\\t-\\t-\\t-\\t$sixty$sixty${sixty%??????????????????}1"
    refused cautions.tsv 3 'warm takes 163 characters in a text of one screen, and 142 are room for it'
    edit references.tsv 2 'key\ttext\tclass'
    refused references.tsv 2 'the header must name these columns'
    edit limits.tsv 2 ''
    refused limits.tsv 4 'the header must name these columns'
    for key in nobody '' ' salt-long' '{salt-long'; do
        edit cautions.tsv 3 "warm\\tblend\\tcaution\\t-\\t-\\t-\\t-\\tabove {salt-long} and {$key}"
        refused cautions.tsv 3 "{$key} is no key of limits.tsv"
    done
    for text in 'above {salt-long' 'above {low} and {' 'above salt-long}' 'above }{low}' '{low}}'; do
        edit cautions.tsv 3 "warm\\tblend\\tcaution\\t-\\t-\\t-\\t-\\t$text"
        refused cautions.tsv 3 'a brace without the other'
    done
    edit topics.tsv 3 'height\t-\t-\ttext'
    refused topics.tsv 3 '"height" leads nowhere'
    edit topics.tsv 3 'height\tblend, ammonia\t-\ttext'
    refused topics.tsv 3 '" ammonia" in asks is no name'
    edit topics.tsv 3 'height\t-\tbelow-rim\ttext'
    refused topics.tsv 3 '"below-rim" in options is no name'
    edit topics.tsv 3 'height\tbath\t-\ttext'
    refused topics.tsv 3 '"bath" is no calculation of cautions.tsv'
    edit topics.tsv 3 'copper\tblend\t-\ttext'
    refused topics.tsv 3 'word "copper" was given in line 2'
    edit durations.tsv 3 'spot\twhite spot\t-\tread\tepa1989\tgone'
    refused durations.tsv 3 '"read" is no class of an act'
    edit durations.tsv 3 'spot\twhite spot\t-\tlaw\tnobody\tgone'
    refused durations.tsv 3 'source "nobody" is no key of references.tsv'
    edit plans/short.tsv 3 '-3\tlook\t-\t-\town\tepa1989'
    refused plans/short.tsv 3 '"own" is no class of an act'
    edit plans/short.tsv 5 '0\tlook\t-\t-\tlaw\tnobody'
    refused plans/short.tsv 5 'source "nobody" is no key of references.tsv'
    edit plans/short.tsv 5 '0\tlook\t-\t-\tlaw\t-'
    refused plans/short.tsv 5 'source "-" is no key of references.tsv'
    edit plans/short.tsv 5 '0\tlook\t-\t-\tlaw'
    refused plans/short.tsv 5 '5 columns, not 6'
    edit plans/short.tsv 2 'act\tday\tevery\tuntil\tclass\tsource'
    refused plans/short.tsv 2 'the header must name these columns'
    sed 2q bad/plans/short.tsv >new
    mv new bad/plans/short.tsv
    refused plans/short.tsv 1 'no rows'
    edit limits.tsv 4 'salt-long\t0.035\tmg/L\t4-day\tepa1989\tfrom {salt-from}'
    refused limits.tsv 4 '{salt-from} is no key of limits.tsv'
    sed 3q bad/limits.tsv >new
    mv new bad/limits.tsv
    refused limits.tsv 1 'no rows'
    i=0
    while [ $i -lt 62 ]; do
        printf 'code%s\tblend\tcaution\t-\t-\t-\t-\ttext\n' $i
        i=$((i + 1))
    done >>bad/cautions.tsv
    refused cautions.tsv 66 'blend has more than 63 notes'
}

# complains WHY ARGUMENT...: refused for its arguments.
complains() {
    why=$1
    shift
    if $awk -f "$script" "$@" >out 2>err; then
        fail "accepted: $*"
    fi
    test ! -s out || fail "output in spite of: $why"
    grep -qF -- "$why" err || fail "expected $why, got $(cat err)"
    checks=$((checks + 1))
}

test_arguments() {
    good set
    : >set/empty
    cp set/limits.tsv set/other.tsv
    complains 'kind must be h or c' set/references.tsv set/limits.tsv set/cautions.tsv
    complains 'kind must be h or c' -v kind=x set/references.tsv set/limits.tsv set/cautions.tsv
    complains 'cautions.tsv is not given, or empty' -v kind=h set/references.tsv set/limits.tsv
    complains 'topics.tsv is not given, or empty' -v kind=h set/references.tsv set/limits.tsv \
        set/cautions.tsv
    complains 'durations.tsv is not given, or empty' -v kind=h set/references.tsv set/limits.tsv \
        set/cautions.tsv set/topics.tsv
    complains 'references.tsv is not given, or empty' -v kind=h set/empty
    cp set/plans/short.tsv set/plans/Short.tsv
    complains 'set/plans/Short.tsv:1: a plan is called NAME.tsv' -v kind=h set/plans/Short.tsv
    complains 'set/other.tsv:1: not references.tsv' -v kind=h set/references.tsv set/other.tsv
    complains 'set/limits.tsv:1: limits.tsv is given twice' -v kind=h set/limits.tsv \
        set/references.tsv set/limits.tsv
}

# The C that comes out compiles, and holds the texts as they were written.
test_compiles() {
    cc=${PLAIN_CC:-gcc}
    cp got.h tables.h
    cp got.c tables.c
    cat >main.c <<'END'
#include <stdio.h>
#include "tables.h"

int main(void)
{
    for (int i = 0; i < HW_REFERENCES; i++)
        puts(hw_references[i].text);
    for (int i = 0; i < HW_BLEND_NOTES; i++)
        puts(hw_blend_notes[i].code);
    puts("above " HW_FIGURE_SALT_LONG);
    for (const struct hw_plan *plan = hw_plans; plan->name; plan++)
        for (int i = 0; plan->lines[i]; i++)
            printf("%s: %s\n", plan->name, plan->lines[i]);
    for (int i = 0; i < HW_DURATIONS; i++)
        printf("%s, %s\n", hw_durations[i].parasite, hw_durations[i].temp ? hw_durations[i].temp : "none");
    printf("%g %d\n", hw_limits[HW_LIMIT_SALT_LONG].value, HW_CAUTIONS);
    return hw_cautions[1].source != NULL;
}
END
    $cc -std=c11 -Wall -Wextra -Wpedantic -Wconversion -Wmissing-prototypes -Werror -trigraphs -I. \
        -I"$root/src" -o main tables.c main.c || fail 'the tables do not compile'
    ./main >out || fail 'a source that is "-" is not NULL'
    {
        cut -f3 set/references.tsv | sed -n '4,$p'
        printf 'over-limit\nwarm\nmixed\nvet\nabove 0.035\n'
        sed 's/^/next-one: /' set/plans/next-one.tsv
        sed 's/^/short: /' set/plans/short.tsv
        printf 'white "spot", 30 C\nwhite spot, none\n0.035 5\n'
    } | cmp - out >&2 || fail 'the texts changed on the way'
    checks=$((checks + 3))
}

found=0
kinds='h c'
for awk in mawk 'gawk --posix' 'busybox awk' ${AWK:+"$AWK"}; do
    if ! command -v "${awk%% *}" >/dev/null; then
        echo "skipped: $awk is not here"
        continue
    fi
    found=$((found + 1))
    test_golden
    test_refusals
    test_arguments
    kinds=h
done
test $found -gt 0 || { echo 'test_tables: no awk at all' >&2; exit 1; }
test_compiles
echo "$checks checks passed"
