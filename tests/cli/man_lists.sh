#!/bin/sh
# Prints a manual page with its lists as the program and the headers have them: the calculations by stage, the units, the
# functions. A list stands between the comments "list NAME" and "end of list"; all else passes.
# Usage: man_lists.sh PROGRAM <docs/man/holdwater.1
set -eu
lists=$(mktemp -d)
trap 'rm -rf "$lists"' EXIT
"$1" | awk '
    /^[a-z]+$/ { print ".It Em " $0; next }
    /^ask:/ { exit }
    /^  [a-z]/ { print ".It Cm " $1; sub(/^  [a-z]+ +/, ""); print; next }
    /^   / { sub(/^ +/, ""); print }' >"$lists/calculations"
"$1" units | awk '
    function flush() { if (line != "") print line; line = "" }
    /\.$/ { next }
    /^[a-z]/ { flush(); print ".It " $0; next }
    /^  [^ ]/ { line = line (line == "" ? "" : ", ") $1
                if (length(line) > 60) { print line ","; line = "" } }
    END { flush() }' >"$lists/units"
awk '
    /^\/\* holdwater\// { print ".It In " $2 }
    told && /^ \* [a-z]/ { sub(/^ \* /, ""); text = text " " $0 }
    told && /[.:] *(\*\/)?$/ { sub(/[.:] *(\*\/)?$/, "", text); print text; told = 0 }
    /^\/\* hw_[a-z0-9_, ]+ - / {
        names = $0; sub(/^\/\* /, "", names); sub(/ - .*/, "", names); gsub(/, /, " , Fn ", names)
        print ".It Fn " names
        text = $0; sub(/^[^-]*- /, "", text)
        told = 1
        if (text ~ /[.:] *(\*\/)?$/) { sub(/[.:] *(\*\/)?$/, "", text); print text; told = 0 } }' \
    include/holdwater/*.h >"$lists/functions"
awk -v lists="$lists" '
    /^\.\\" list / { print; file = lists "/" $3; while ((getline line <file) > 0) print line; close(file); within = 1; next }
    /^\.\\" end of list/ { within = 0 }
    !within { print }'
