#!/bin/sh
# decimal.sh BUILD - compares tens of millions of decimal numbers with strtod and snprintf.
set -eu

build=${1:-build}
mkdir -p "$build/long"
${CC:-cc} -O2 -std=c11 -ffp-contract=off -Iinclude -Isrc -o "$build/long/decimal_long" \
    tests/long/decimal_long.c src/engine/decimal.c src/engine/decimal_quick.c -lm
"$build/long/decimal_long"
