#!/bin/sh
# same_bytes.sh BUILD - the same source in two folders, built in folders of other names, makes the same
# program and libraries, byte for byte, debugging information included.
set -eu

. tests/scratch.sh

# What a make above hands down is not wanted here.
unset MAKEFLAGS MFLAGS MAKELEVEL CFLAGS 2>/dev/null || true

# tree NAME BUILD: the source in a folder of that name, built.
tree() {
    mkdir -p "$scratch/$1"
    cp -R Makefile make src include data LICENSE docs tests "$scratch/$1"
    make -s -j2 -C "$scratch/$1" BUILD="$2" all
}

tree one build
tree another/longer/name "$scratch/elsewhere"
compared=0
for file in "$scratch"/one/build/holdwater "$scratch"/one/build/libholdwater.*; do
    cmp "$file" "$scratch/elsewhere/${file##*/}"
    ! grep -qF "$scratch" "$file" || { echo "same_bytes: ${file##*/} holds the folder $scratch" >&2; exit 1; }
    compared=$((compared + 1))
done
[ $compared -eq 3 ] || { echo "same_bytes: only $compared files" >&2; exit 1; }
readelf -S "$scratch/one/build/holdwater" | grep -q debug_info ||
    { echo 'same_bytes: no debugging information, which tells most' >&2; exit 1; }
echo "$compared files, the same bytes from two folders"
