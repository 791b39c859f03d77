# example_rows.awk - the first example of a calculation's help as rows: each number gets a column, its unit in the header,
# and varies by half a per cent; words stay options.
# awk -v count=N -v options=FILE -f example_rows.awk, fed by `holdwater help NAME examples`; options go to FILE.
function random() { x = (x * 16807) % 2147483647; return x / 2147483647 }

# A number is kept whole where it counts something.
function counts(name) { return name ~ /^(doses|meals|steps|times)$/ }

done || !($0 ~ /^    holdwater / || more) { next }
{
    command = command " " $0
    more = sub(/\\$/, "", command)
    done = !more
}

END {
    x = 20310305
    n = split(command, word, " ")
    line = ""
    for (i = 3; i < n; i += 2) {
        name = substr(word[i], 3)
        number = word[i + 1]
        if (number !~ /^[0-9.]+[^0-9.]*$/) { line = line " " word[i] " " number; continue }
        unit = number
        sub(/^[0-9.]+/, "", unit)
        columns++
        value[columns] = number + 0
        whole[columns] = counts(name)
        printf "%s%s%s", (columns > 1 ? "," : ""), name, (unit == "" ? "" : " (" unit ")")
    }
    print ""
    print line >options
    for (row = 0; row < count; row++) {
        for (k = 1; k <= columns; k++) {
            printf "%s%.5g", (k > 1 ? "," : ""), (whole[k] ? 1 : 0.995 + 0.01 * random()) * value[k]
        }
        print ""
    }
}
