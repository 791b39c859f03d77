#!/bin/sh
# The headers of src/calc go together: all of them in one file compile, in either order.
# Usage: test_helpers.sh BUILD
set -eu
. tests/scratch.sh
for order in sort 'sort -r'; do
    ls src/calc/*.h | $order | sed 's|^src/|#include "|; s|$|"|' >"$scratch/all.c"
    echo 'int main(void) { return 0; }' >>"$scratch/all.c"
    ${PLAIN_CC:-gcc} -std=c11 -Wall -Wextra -Werror -Wno-unused -Iinclude -Isrc -I"$build" -fsyntax-only "$scratch/all.c"
done
echo "$((2 * $(ls src/calc/*.h | wc -l))) checks passed"
