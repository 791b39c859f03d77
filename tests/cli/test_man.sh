#!/bin/sh
# The manual page has the lists of the program: calculations and units as they are, and an entry for each command and each
# option that every calculation takes, and for no other. `make man` renews what is copied.
# Usage: test_man.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
page=docs/man/holdwater.1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

fail() {
    echo "test_man: $1" >&2
    exit 1
}

sh tests/cli/man_lists.sh "$program" <$page >"$work/page"
cmp $page "$work/page" >&2 || fail "the lists of $page are not the program's: make man"

# The options, as the program itself names them to a shell.
"$program" completion next ammonia -- | sed -n 's/^--\([a-z-]*\)	.*/\1/p' >"$work/all"
"$program" help ammonia | sed -n 's/^  [ a-z*] --\([a-z-]*\).*/\1/p' >"$work/inputs"
grep -vxFf "$work/inputs" "$work/all" | sort >"$work/options"
sed -n 's/^\.It Fl \\-\([a-z-]*\).*/\1/p' $page | grep -v '^version$' | sort >"$work/told"
diff "$work/options" "$work/told" >&2 || fail 'other options in the page than in the program'

# The commands: words that are no calculations.
"$program" completion next '' | sed 's/	.*//; 1d; /^-/d' | sort >"$work/words"
"$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' | sort -u | grep -vx 'calendar\|trend' >"$work/calculations"
grep -vxFf "$work/calculations" "$work/words" | sort >"$work/commands"
sed -n 's/^\.It Cm \([a-z]*\).*/\1/p' $page | sort -u | grep -vxFf "$work/calculations" >"$work/told"
diff "$work/commands" "$work/told" >&2 || fail 'other commands in the page than in the program'
[ "$(wc -l <"$work/options")" -gt 20 ] && [ "$(wc -l <"$work/commands")" -gt 6 ] || fail 'nothing was compared'
echo "$(($(cat "$work/options" "$work/commands" | wc -l) + 2)) checks passed"
