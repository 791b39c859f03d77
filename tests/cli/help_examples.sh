#!/bin/sh
# Prints the examples of every help, one a line, without the name of the program: those that ask a calculation one
# question, with no rows, format or working of their own, and none of the commands by hand, which have formats and options
# of their own. An example may go on in the next line, which stands further in.
# Usage: help_examples.sh PROGRAM
set -eu
"$1" | sed -n 's/^  \([a-z]*\) .*/\1/p' | while read -r name; do
    "$1" help "$name" examples 2>/dev/null || true
done | awk '
    function tell() { if (line != "" && line !~ /^calendar |--rows|--format|--work|[|]/) print line; line = "" }
    /^    holdwater / { tell(); line = substr($0, 15); next }
    line != "" && /^        / { sub(/ \\$/, "", line); line = line " " substr($0, 9); next }
    { tell() }
    END { tell() }'
