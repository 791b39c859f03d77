#!/bin/sh
# test_quoted.sh BUILD - what the docs say of limits in their own words is what data/limits.tsv says.
# What a command prints there is held by the cases, and rewritten with them.
set -eu

. tests/scratch.sh
quoted=tests/tables/quoted.tsv

LC_ALL=C
export LC_ALL

# fill SUFFIX: the rows of quoted.tsv, file and text, with SUFFIX put behind each figure.
fill() {
    ${AWK:-awk} -F '\t' -v suffix="$1" '
        /^#/ { next }
        FNR == NR { figure[$1] = $2; next }
        {
            out = ""
            text = $2
            for (from = index(text, "{"); from > 0; from = index(text, "{")) {
                to = index(text, "}")
                key = substr(text, from + 1, to - from - 1)
                if (!(key in figure)) {
                    print FILENAME ":" FNR ": {" key "} is no key of limits.tsv" | "cat 1>&2"
                    exit 1
                }
                out = out substr(text, 1, from - 1) figure[key] suffix
                text = substr(text, to + 1)
            }
            print $1 "\t" out text
        }' data/limits.tsv "$quoted"
}

# said FILE TEXT: FILE has TEXT, however its lines are broken.
said() {
    tr -s '\n ' '  ' <"$1" | tr -s ' ' | grep -qF -- "$2"
}

fill '' >"$scratch/true"
fill 7 >"$scratch/false"
tab=$(printf '\t')
checks=0
failed=0
while IFS=$tab read -r file text; do
    if ! said "$file" "$text"; then
        echo "test_quoted: $file does not say: $text" >&2
        failed=1
    fi
    checks=$((checks + 1))
done <"$scratch/true"

# With other figures no row holds, so each of them looks at one.
while IFS=$tab read -r file text; do
    if said "$file" "$text"; then
        echo "test_quoted: $quoted: this row looks at no figure: $text" >&2
        failed=1
    fi
    checks=$((checks + 1))
done <"$scratch/false"
if [ $failed -ne 0 ]; then
    echo "test_quoted: correct the docs by data/limits.tsv, or $quoted by the docs" >&2
    exit 1
fi
echo "$checks checks passed"
