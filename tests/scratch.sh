# scratch.sh - read by test scripts that are started in the folder of the source with BUILD: sets build, and scratch, an
# empty folder below it that is gone when the script ends.
mkdir -p "${1:-build}/scratch"
build=$(cd "${1:-build}" && pwd)
scratch=$(mktemp -d "$build/scratch/${0##*/}.XXXXXX")
trap 'rm -rf "$scratch"' EXIT
