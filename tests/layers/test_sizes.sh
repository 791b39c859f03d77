#!/bin/sh
# test_sizes.sh BUILD - no function of src is longer than 60 lines, braces included, and no file than
# 400. A function's body begins with a { and ends with a } in the first column, as the formatter
# writes it; a struct or a table ends with }; and its { stands elsewhere.
set -eu

. tests/scratch.sh
root=$(pwd)

# Everything that is too long, one per line; the last line counts the functions.
faults() {
    # shellcheck disable=SC2046
    LC_ALL=C awk -v lines_max=60 -v file_max=400 '
        function finish() {
            if (lines > file_max)
                print name ": " lines " lines"
        }
        FNR == 1 { finish(); name = FILENAME; from = 0 }
        { lines = FNR }
        /^[{]/ { from = FNR }
        /^[}]/ && from > 0 {
            functions++
            if (FNR - from + 1 > lines_max)
                print FILENAME ":" from ": a function of " FNR - from + 1 " lines"
            from = 0
        }
        END { finish(); print functions + 0 " functions" }
    ' $(find src -name '*.[ch]' | LC_ALL=C sort)
}

fail() {
    echo "test_sizes: $1" >&2
    exit 1
}

checks=0

# wants LINES BODY FAULT: a file of that many lines with a function of that many has that fault.
wants() {
    awk -v lines="$1" -v body="$2" 'BEGIN {
        print "int f(void)\n{"
        for (i = 3; i < body + 1; i++)
            print "    g();"
        print "}"
        for (i = body + 2; i <= lines; i++)
            print "int x" i ";"
    }' >src/a.c
    faults >"$scratch/found"
    case $3 in
    '') test "$(wc -l <"$scratch/found")" -eq 1 ;;
    *) test "$(wc -l <"$scratch/found")" -eq 2 && grep -qx "$3" "$scratch/found" ;;
    esac || fail "self-test, wanted: $3, got: $(cat "$scratch/found")"
    tail -n 1 "$scratch/found" | grep -qx '1 functions' || fail "functions are not counted"
    checks=$((checks + 1))
}

mkdir -p "$scratch/tree/src"
cd "$scratch/tree"
wants 100 60 ''
wants 100 61 'src/a.c:2: a function of 61 lines'
wants 400 20 ''
wants 401 20 'src/a.c: 401 lines'

cd "$root"
faults >"$scratch/found"
if [ "$(wc -l <"$scratch/found")" -ne 1 ]; then
    sed '$d' "$scratch/found" >&2
    exit 1
fi
functions=$(sed 's/ functions//' "$scratch/found")
test "$functions" -gt 500 || fail "only $functions functions"
echo "$((checks + functions)) checks passed"
