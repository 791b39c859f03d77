#!/bin/sh
# same_bytes.sh BUILD - the same source in two folders, built in folders of other names, makes the same
# program and libraries, byte for byte, debugging information included.
set -eu

build=$(cd "${1:-build}" && pwd)
mkdir -p "$build/long"
scratch=$(mktemp -d "$build/long/same.XXXXXX")
trap 'rm -rf "$scratch"' EXIT

# tree NAME BUILD: the source in a folder of that name, built.
tree() {
    mkdir -p "$scratch/$1"
    cp -R Makefile make src include data LICENSE docs tests "$scratch/$1"
    make -s -C "$scratch/$1" BUILD="$2" all
}

tree one build
tree another/longer/name "$scratch/elsewhere"
compared=0
for file in "$scratch"/one/build/holdwater "$scratch"/one/build/libholdwater.*; do
    cmp "$file" "$scratch/elsewhere/${file##*/}"
    compared=$((compared + 1))
done
[ $compared -eq 3 ] || { echo "same_bytes: only $compared files" >&2; exit 1; }
readelf -S "$scratch/one/build/holdwater" | grep -q debug_info ||
    { echo 'same_bytes: no debugging information, which tells most' >&2; exit 1; }
echo "$compared files, the same bytes from two folders"
