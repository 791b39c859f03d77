#!/bin/sh
# test_run_cases.sh BUILD - the runner of the CLI cases, shown able to fail and to rewrite.
set -eu

. tests/scratch.sh
runner=$(cd "$build/tests/cli" && pwd)/run_cases
cd "$scratch"

HOLDWATER=$(command -v echo) HOLDWATER_RUN='' HOLDWATER_DATA=/data
test -x "$HOLDWATER" || HOLDWATER=/bin/echo
export HOLDWATER HOLDWATER_RUN HOLDWATER_DATA
checks=0

fail() {
    echo "test_run_cases: $1" >&2
    cat log >&2
    exit 1
}

# passes NAME FILE COUNT: FILE passes, with so many checks.
passes() {
    "$runner" "$2" >log 2>&1 || fail "$1: should pass"
    grep -q "^$3 checks passed" log || fail "$1: should run $3 cases"
    checks=$((checks + 1))
}

# fails NAME FILE WORDS: FILE does not pass, and the output tells WORDS.
fails() {
    if "$runner" --seconds 1 "$2" >log 2>&1; then
        fail "$1: should fail"
    fi
    grep -qF -- "$3" log || fail "$1: should say: $3"
    if grep -q 'checks passed' log; then
        fail "$1: counts checks in a run that failed"
    fi
    checks=$((checks + 1))
}

# updates NAME FILE WANT: --update turns FILE into WANT, and then it passes as it is.
updates() {
    "$runner" --update "$2" >log 2>&1 || fail "$1: update should succeed"
    cmp "$2" "$3" >>log 2>&1 || fail "$1: update wrote something else: $(diff "$2" "$3")"
    "$runner" "$2" >log 2>&1 || fail "$1: should pass after the update"
    checks=$((checks + 2))
}

# --- Good cases

cat >good.txt <<'END'
# Comments stand at the start,
#
# or after a blank line.

$ holdwater two words
two words

$ echo out; echo err >&2; exit 3
out
! err
= 3

# A comment between cases.
$ printf '\n\nblank lines\n\n\n'


blank lines



$ printf '%s\n' '$ a' '! b' '= 4' '# c' '\d' '!'
\$ a
\! b
\= 4
\# c
\\d
\!
$ printf 'no end'
no end
\ no newline

$ printf 'a\n\nb\n' >&2
! a
!
! b

$ echo kept >file; ls
file
$ cat file; pwd | grep -c cases-
kept
1
$ read word; echo "$word" $?
 1
$ env | cut -d= -f1 | grep -v -e PWD -e SHLVL -e '^_$' -e OLDPWD | LC_ALL=C sort
HOLDWATER
HOLDWATER_DATA
HOLDWATER_RUN
HOME
LC_ALL
PATH
TZ
$ echo one \
      two
one two
$ echo '{"a": 0.1000000000000001, "b": [1e3, -2, "x\"1"]}'
{"a": 0.1, "b": [1000, -2.0, "x\"1"]}
$ kill -9 $$
= 137
END
passes good good.txt 13

cp good.txt same.txt
touch -d '2031-01-01 00:00' same.txt
"$runner" --update same.txt >log 2>&1 || fail 'update of a good file'
test same.txt -nt good.txt || fail 'update rewrote a file that had not changed'
cmp same.txt good.txt >log 2>&1 || fail 'update changed a good file'
checks=$((checks + 2))

cat >good.md <<'END'
# Title

$ this is text

```
no case
```

```
$ holdwater a
a

$ holdwater b
b
```

````text
$ printf '%s\n' '```' '# x'
```
# x
````
END
passes markdown good.md 3
printf 'text only\n' >none.md
passes 'markdown without cases' none.md 0
HOLDWATER_RUN='env X=1' "$runner" good.md >log 2>&1 || fail 'HOLDWATER_RUN with two words'
checks=$((checks + 1))

# --- Bad ones; each must fail, and pass when it has been rewritten

printf '# why\n\n$ holdwater one\nother\n\n# next\n$ true\n' >stdout.txt
printf '# why\n\n$ holdwater one\none\n\n# next\n$ true\n' >stdout.want
fails 'wrong line' stdout.txt 'stdout.txt:3: holdwater one'
fails 'wrong line' stdout.txt '    | other'
fails 'wrong line' stdout.txt '1 of 2 cases fail'
updates 'wrong line' stdout.txt stdout.want

printf '$ holdwater one\none\n\n$ exit 4\n= 3\n' >status.txt
printf '$ holdwater one\none\n\n$ exit 4\n= 4\n' >status.want
fails 'wrong status' status.txt 'expected status 3, got 4'
updates 'wrong status' status.txt status.want

printf '$ exit 4\n' >nostatus.txt
printf '$ exit 4\n= 4\n' >nostatus.want
fails 'no status' nostatus.txt 'expected status 0, got 4'
updates 'no status' nostatus.txt nostatus.want

printf '$ true\n= 1\n' >zero.txt
printf '$ true\n' >zero.want
fails 'status of a success' zero.txt 'expected status 1, got 0'
updates 'status of a success' zero.txt zero.want

printf '$ echo a; echo e >&2\na\n' >stderr.txt
printf '$ echo a; echo e >&2\na\n! e\n' >stderr.want
fails 'missing stderr line' stderr.txt 'got stderr'
updates 'missing stderr line' stderr.txt stderr.want

printf '$ echo a\na\n! e\n' >extra.txt
printf '$ echo a\na\n' >extra.want
fails 'stderr that is not there' extra.txt 'got stderr: nothing'
updates 'stderr that is not there' extra.txt extra.want

printf '$ printf a\na\n' >newline.txt
printf '$ printf a\na\n\\ no newline\n' >newline.want
fails 'no last newline' newline.txt 'no newline'
updates 'no last newline' newline.txt newline.want

printf '$ printf "a\\n\\n"\na\n' >blank.txt
printf '$ printf "a\\n\\n"\na\n\n\n' >blank.want
fails 'a blank line more' blank.txt 'got stdout'
updates 'a blank line more' blank.txt blank.want

printf '$ printf "%%s\\n" "# a" "\\$ b" "! c" "= 1"\n\n$ true\n' >marks.txt
printf '$ printf "%%s\\n" "# a" "\\$ b" "! c" "= 1"\n\\# a\n\\$ b\n\\! c\n\\= 1\n\n$ true\n' >marks.want
fails 'lines that look like marks' marks.txt 'got stdout'
updates 'lines that look like marks' marks.txt marks.want

printf '$ echo "{\\"a\\": 0.100000000001}"\n{"a": 0.1}\n' >json.txt
fails 'JSON number' json.txt 'expected stdout'
printf '$ echo "{\\"a\\": \\"0.10000000000000001\\"}"\n{"a": "0.1"}\n' >string.txt
fails 'number in a JSON string' string.txt 'expected stdout'
printf '$ echo "a 0.10000000000000001"\na 0.1\n' >plain.txt
fails 'number outside JSON' plain.txt 'expected stdout'
printf '$ echo "{}"; exit 0\n{} \n' >tail.txt
fails 'JSON with a tail' tail.txt 'expected stdout'

printf 'x\n\n```\n$ holdwater a\nb\n```\n\ny\n' >bad.md
printf 'x\n\n```\n$ holdwater a\na\n```\n\ny\n' >bad.want
fails markdown bad.md 'bad.md:4: holdwater a'
updates markdown bad.md bad.want

chmod 640 bad.md
printf 'x\n\n```\n$ holdwater a\nb\n```\n\ny\n' >bad.md
"$runner" --update bad.md >log 2>&1 || fail 'update once more'
test "$(ls -l bad.md | cut -c1-10)" = -rw-r----- || fail 'update lost the mode of the file'
checks=$((checks + 1))

# --- Files that are refused

printf '# only a comment\n' >empty.txt
fails 'no case' empty.txt 'holds no case'
printf 'text\n$ true\n' >text.txt
fails 'text before a case' text.txt 'text.txt:1: neither'
printf '$ true\n= x\n' >number.txt
fails 'status in words' number.txt 'number.txt:2: '
printf '$ true\n\\ no newline\n' >mark.txt
fails 'mark without output' mark.txt 'mark.txt:2: '
printf '```\n$ true\n' >open.md
fails 'open block' open.md 'open.md:1: this block has no end'
printf '$ true\n' >other.c
fails 'another kind of file' other.c 'neither a *.txt nor'
fails 'no such file' missing.txt 'missing.txt'
printf '$ sleep 5\n' >slow.txt
fails 'time limit' slow.txt 'not done in 1 s'

echo "$checks checks passed"
