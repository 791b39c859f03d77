#!/bin/sh
# warnings.sh BUILD - no warning from gcc and clang at any level of optimisation, tests included; with and
# without the hardened flags.
set -eu

. tests/scratch.sh

builds=0
for cc in gcc clang; do
    command -v $cc >/dev/null || { echo "skipped: warnings of $cc, which is not there"; continue; }
    for level in -O0 -O1 -O2 -O3; do
        for harden in yes ''; do
            # Hardened or not, the same source is compiled: the second way at one level is enough.
            case $level$harden in -O0 | -O1 | -O3) continue ;; esac
            make -s -j2 BUILD="$scratch" CC=$cc CFLAGS="$level -g" HARDEN=$harden WERROR=1 all test-objects
            builds=$((builds + 1))
        done
    done
done
echo "$builds builds without a warning"
