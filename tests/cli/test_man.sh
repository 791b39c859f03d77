#!/bin/sh
# The manual pages have the lists of the program: calculations, units and functions as they are, and an entry for each
# command and each option that every calculation takes, and for no other. `make man` renews what is copied.
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

for copied in $page docs/man/holdwater.3; do
    sh tests/cli/man_lists.sh "$program" <$copied >"$work/page"
    cmp $copied "$work/page" >&2 || fail "the lists of $copied are not those of the source: make man"
done
# Every function that a program can call has its line.
sed -n 's/^[a-z].*\(hw_[a-z0-9_]*\)(.*/\1/p' tests/core/library_prototypes.h | sort >"$work/functions"
sed -n 's/ , Fn /\n/g; s/^\.It Fn //p' docs/man/holdwater.3 | sort >"$work/told"
diff "$work/functions" "$work/told" >&2 || fail 'other functions in holdwater.3 than in the headers'

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
echo "$(($(cat "$work/options" "$work/commands" "$work/functions" | wc -l) + 3)) checks passed"
