#!/bin/sh
# The manual pages have the lists of the program: calculations, units and functions as they are, and an entry for each
# command and each option that every calculation takes, and for no other. `make man` renews what is copied.
# Usage: test_man.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
page=docs/man/holdwater.1

fail() {
    echo "test_man: $1" >&2
    exit 1
}

for copied in $page docs/man/holdwater.3; do
    sh tests/cli/man_lists.sh "$program" <$copied >"$scratch/page"
    cmp $copied "$scratch/page" >&2 || fail "the lists of $copied are not those of the source: make man"
done
# Every function that a program can call has its line.
sed -n 's/^[a-z].*\(hw_[a-z0-9_]*\)(.*/\1/p' tests/core/library_prototypes.h | sort >"$scratch/functions"
sed -n 's/ , Fn /\n/g; s/^\.It Fn //p' docs/man/holdwater.3 | sort >"$scratch/told"
diff "$scratch/functions" "$scratch/told" >&2 || fail 'other functions in holdwater.3 than in the headers'

# The options, as the program itself names them to a shell.
"$program" completion next ammonia -- | sed -n 's/^--\([a-z-]*\)	.*/\1/p' >"$scratch/all"
"$program" help ammonia | sed -n 's/^  [ a-z*] --\([a-z-]*\).*/\1/p' >"$scratch/inputs"
grep -vxFf "$scratch/inputs" "$scratch/all" | sort >"$scratch/options"
sed -n 's/^\.It Fl \\-\([a-z-]*\).*/\1/p' $page | grep -v '^version$' | sort >"$scratch/told"
diff "$scratch/options" "$scratch/told" >&2 || fail 'other options in the page than in the program'

# The commands: words that are no calculations.
"$program" completion next '' | sed 's/	.*//; 1d; /^-/d' | sort >"$scratch/words"
"$program" | sed -n '1,/^ask:/s/^  \([a-z][a-z]*\) .*/\1/p' | sort -u | grep -vx 'calendar\|trend' >"$scratch/calculations"
grep -vxFf "$scratch/calculations" "$scratch/words" | sort >"$scratch/commands"
sed -n 's/^\.It Cm \([a-z]*\).*/\1/p' $page | sort -u | grep -vxFf "$scratch/calculations" >"$scratch/told"
diff "$scratch/commands" "$scratch/told" >&2 || fail 'other commands in the page than in the program'
[ "$(wc -l <"$scratch/options")" -gt 20 ] && [ "$(wc -l <"$scratch/commands")" -gt 6 ] || fail 'nothing was compared'
echo "$(($(cat "$scratch/options" "$scratch/commands" "$scratch/functions" | wc -l) + 3)) checks passed"
