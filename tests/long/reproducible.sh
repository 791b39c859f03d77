#!/bin/sh
# The same source in two folders makes the same bytes: the program and the library, and the stripped
# program too. Wants -ffile-prefix-map in the flags, as the debugger's lines hold the folder.
# Usage: reproducible.sh BUILD
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$1/scratch"
work=$(mktemp -d "$(cd "$1/scratch" && pwd)/same.XXXXXX")
trap 'rm -rf "$work"' EXIT
# What a make above hands down is not wanted here.
unset MAKEFLAGS MFLAGS MAKELEVEL CFLAGS BUILD 2>/dev/null || true

for folder in one a/longer/second; do
    mkdir -p "$work/$folder"
    cp -R "$root/Makefile" "$root/make" "$root/include" "$root/src" "$root/data" "$work/$folder/"
    make -s -C "$work/$folder" -j2 all
done
checks=0
for file in holdwater libholdwater.a; do
    if ! cmp "$work/one/build/$file" "$work/a/longer/second/build/$file"; then
        echo "reproducible: build/$file holds the folder that it was built in: is -ffile-prefix-map among the flags?" >&2
        exit 1
    fi
    if grep -qF "$work" "$work/one/build/$file"; then
        echo "reproducible: build/$file holds the path $work" >&2
        exit 1
    fi
    checks=$((checks + 2))
done
echo "$checks checks passed"
