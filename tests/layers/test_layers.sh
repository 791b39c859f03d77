#!/bin/sh
# test_layers.sh BUILD - the #include lines: arrows go one way, cli -> engine -> calc -> core.
#
# core    its own headers, holdwater/, and of the standard headers not stdio, stdlib, errno, locale
# calc    calc, holdwater/, tables.h, and of the core its kernels, for a block function; no stdio
# engine  engine, calc, holdwater/; no stdio, except working.c and decimal.c, which format numbers with
#         snprintf
# cli     cli, engine, calc, tables.h, holdwater/
#
# Also: no setlocale and no long double anywhere, and file base names are unique in src and tests.
set -eu

. tests/scratch.sh
root=$(pwd)

# Every fault in the tree of the current folder, one per line; the last line counts the files.
faults() {
    find include src tests -name '*.[ch]' 2>/dev/null | LC_ALL=C sort >"$scratch/files"
    # shellcheck disable=SC2046
    LC_ALL=C awk '
        function fault(why) { print FILENAME ":" FNR ": " why }

        # The layer a quoted include leads to. One without a folder is beside the file itself.
        function target(name) {
            if (name == "tables.h")
                return "tables"
            if (name ~ /^(core|calc|engine|cli|holdwater)\//)
                return substr(name, 1, index(name, "/") - 1)
            if (index(name, "/") == 0)
                return layer
            return "?"
        }

        BEGIN {
            allowed["core"] = " core holdwater "
            allowed["calc"] = " calc holdwater tables "
            allowed["engine"] = " engine calc holdwater "
            allowed["cli"] = " cli engine calc holdwater tables "
            allowed["holdwater"] = " holdwater "
        }

        FNR == 1 {
            files++
            layer = "tests"
            if (FILENAME ~ /^include\//)
                layer = "holdwater"
            else if (FILENAME ~ /^src\//) {
                split(FILENAME, folder, "/")
                layer = folder[2]
                if (!(layer in allowed))
                    fault("no such layer: " layer)
            }
            base = FILENAME
            sub(/^.*\//, "", base)
            if (base ~ /[.]c$/) {
                if (base in where)
                    fault(base " is also " where[base])
                where[base] = FILENAME
            }
        }

        /setlocale/ { fault("setlocale") }
        /long[ \t]+double/ && $0 !~ /no long double/ { fault("long double") }

        layer == "tests" { next }

        /^[ \t]*#[ \t]*include[ \t]*"/ {
            split($0, part, "\"")
            kernel = layer == "calc" && part[2] ~ /^core\/[a-z0-9_]+_kernel[.]h$/
            if (!kernel && index(allowed[layer], " " target(part[2]) " ") == 0)
                fault(layer " includes \"" part[2] "\"")
            next
        }

        /^[ \t]*#[ \t]*include[ \t]*</ {
            name = $0
            sub(/^[^<]*</, "", name)
            sub(/>.*/, "", name)
            if (name ~ /^holdwater\//)
                next
            if (layer == "holdwater" && name !~ /^(stddef|stdint|stdbool)[.]h$/)
                fault("a public header includes <" name ">")
            if (layer == "core" && name !~ /^(math|float|limits|stddef|stdint|stdbool|string)[.]h$/)
                fault("core includes <" name ">")
            if (layer == "calc" && name == "stdio.h")
                fault("calc includes <stdio.h>")
            if (layer == "engine" && name == "stdio.h" &&
                FILENAME !~ /^src\/engine\/(working|decimal)[.]c$/)
                fault("engine includes <stdio.h>")
            if (name ~ /^(sys|arpa|netinet)\// || name ~ /^(unistd|fcntl|poll|signal)[.]h$/)
                if (layer != "cli")
                    fault(layer " includes <" name ">, which is POSIX")
            next
        }

        /^[ \t]*#[ \t]*include/ { fault("an include that is neither \"...\" nor <...>") }

        END { print files + 0 " files" }
    ' $(cat "$scratch/files") /dev/null
}

# --- The test itself, on a small tree

checks=0

plant() {
    mkdir -p "$(dirname "$1")"
    printf '%s\n' "$2" >"$1"
}

fail() {
    echo "test_layers: $1" >&2
    exit 1
}

# finds FILE LINE WHY: a tree with that line in that file has this one fault.
finds() {
    plant "$1" "$2"
    faults >found
    test "$(wc -l <found)" -eq 2 || fail "self-test, one fault wanted for $1: $2: $(cat found)"
    grep -qF -- "$1:1: $3" found || fail "self-test, wanted $1:1: $3, got $(cat found)"
    rm "$1"
    checks=$((checks + 1))
}

# allows FILE LINE: a tree with that line in that file has no fault.
allows() {
    plant "$1" "$2"
    faults >found
    test "$(wc -l <found)" -eq 1 || fail "self-test, no fault wanted for $1: $2: $(cat found)"
    rm "$1"
    checks=$((checks + 1))
}

cd "$scratch"
plant include/holdwater/a.h '#include <stdint.h>'
plant src/core/a.c '#include <math.h>'
plant tests/core/test_a.c '#include <stdio.h>'

allows src/core/b.c '#include "holdwater/a.h"'
allows src/core/b.c '#include <holdwater/a.h>'
allows src/core/b.c '#include "core/a.h"'
allows src/core/b.c '#include "a.h"'
allows src/calc/b.c '#include "tables.h"'
allows src/calc/b.c '#include "calc/calc.h"'
allows src/calc/b.c '#include "core/a_kernel.h"'
allows src/engine/b.c '#include "calc/calc.h"'
allows src/engine/working.c '#include <stdio.h>'
allows src/engine/decimal.c '#include <stdio.h>'
allows src/cli/b.c '#include <stdio.h>'
allows src/cli/b.c '#include <unistd.h>'
allows src/cli/b.c '#include "engine/unit.h"'
finds src/core/b.c '#include "calc/calc.h"' 'core includes "calc/calc.h"'
finds src/core/b.c '#include "tables.h"' 'core includes "tables.h"'
finds src/core/b.c '#include "../calc/calc.h"' 'core includes "../calc/calc.h"'
finds src/core/b.c '#include <stdio.h>' 'core includes <stdio.h>'
finds src/core/b.c '  #  include <stdlib.h>' 'core includes <stdlib.h>'
finds src/core/b.c '#include <errno.h>' 'core includes <errno.h>'
finds src/core/b.c '#include <locale.h>' 'core includes <locale.h>'
finds src/core/b.c '#include HEADER' 'an include that is neither'
finds src/calc/b.c '#include "engine/unit.h"' 'calc includes "engine/unit.h"'
finds src/calc/b.c '#include "core/a.h"' 'calc includes "core/a.h"'
finds src/calc/b.c '#include "core/kernel.h"' 'calc includes "core/kernel.h"'
finds src/engine/b.c '#include "core/a_kernel.h"' 'engine includes "core/a_kernel.h"'
finds src/calc/b.c '#include <stdio.h>' 'calc includes <stdio.h>'
finds src/engine/b.c '#include "cli/help.h"' 'engine includes "cli/help.h"'
finds src/engine/b.c '#include "core/a.h"' 'engine includes "core/a.h"'
finds src/engine/b.c '#include "tables.h"' 'engine includes "tables.h"'
finds src/engine/b.c '#include <stdio.h>' 'engine includes <stdio.h>'
finds src/engine/decimal.h '#include <stdio.h>' 'engine includes <stdio.h>'
finds src/engine/b.c '#include <unistd.h>' 'engine includes <unistd.h>, which is POSIX'
finds src/cli/b.c '#include "core/a.h"' 'cli includes "core/a.h"'
finds src/other/b.c 'int x;' 'no such layer: other'
finds include/holdwater/b.h '#include "calc/calc.h"' 'holdwater includes "calc/calc.h"'
finds include/holdwater/b.h '#include <stdio.h>' 'a public header includes <stdio.h>'
finds src/cli/b.c '    setlocale(LC_ALL, "");' 'setlocale'
finds src/core/b.c 'long  double x;' 'long double'
finds tests/core/b.c 'long double x;' 'long double'
finds src/engine/a.c 'int x;' 'a.c is also src/core/a.c'
finds tests/engine/test_a.c 'int x;' 'test_a.c is also tests/core/test_a.c'

# --- The tree

cd "$root"
faults >"$scratch/found"
if [ "$(wc -l <"$scratch/found")" -ne 1 ]; then
    sed '$d' "$scratch/found" >&2
    exit 1
fi
files=$(sed 's/ files//' "$scratch/found")
echo "$((checks + files)) checks passed"
