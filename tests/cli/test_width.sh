#!/bin/sh
# What is printed for people fits a terminal of 79 columns: the map, the lists, each help, each example of a help.
# Usage: test_width.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
checks=0
cd "$work"

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
"$program" | sed -n 's/^  \([a-z]*\) .*/\1/p' >names.txt
for name in $(cat names.txt); do
    "$program" help "$name" >help.txt 2>/dev/null || continue
    narrow help "$name"
    # an example may go on in the next line, which stands further in
    awk '/^    holdwater / { if (line) print line; line = substr($0, 15); next }
         line && /^        / { line = line " " substr($0, 9); next }
         { if (line) print line; line = "" }' help.txt >examples.txt
    while read -r example; do
        case $example in
        *--rows* | *--format* | *--work* | *"|"*) continue ;;
        esac
        # shellcheck disable=SC2086
        narrow $example
        case $example in
        *:*) ;; # a sweep has no working
        *)
            # shellcheck disable=SC2086
            narrow $example --work
            ;;
        esac
    done <examples.txt
done
[ "$checks" -gt 100 ] || { echo "only $checks checks" >&2; exit 1; }
echo "$checks checks passed"
