#!/bin/sh
# Prints the manual page with its lists as the program has them: the calculations by stage, and the units. A list stands
# between the comments "list NAME" and "end of list"; all else passes.
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
    END { flush() }' | sed 's/,$/,/' >"$lists/units"
awk -v lists="$lists" '
    /^\.\\" list / { print; file = lists "/" $3; while ((getline line <file) > 0) print line; close(file); within = 1; next }
    /^\.\\" end of list/ { within = 0 }
    !within { print }'
