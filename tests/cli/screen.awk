# screen.awk - prints what is wrong with an answer as a screen of 80 columns; nothing when all is well.
# Variables: most, how many lines it may have; table, 1 when its results are a table of their own.

# The caution that was read up to here is at an end.
function judge_caution() {
    if (length(caution) > 156)
        print "a caution of over 156 characters"
    caution = ""
}

length > 79 {
    print "over 79 columns"
}

# The results stand first, each on a line, before whatever else begins at the edge.
NR > 1 && /^[^ ]/ {
    below = 1
}

NR > 1 && /^     / && !below && !table {
    print "a result of two lines"
}

/^[^ ]/ {
    judge_caution()
    list = /^(never|mind):/
}

/^([a-zA-Z] |POSSIBLE )?CAUTION/ {
    caution = $0
    sub(/^([a-zA-Z] |POSSIBLE )/, "", caution)
    if ($0 !~ /^P/)
        raised++
    next
}

caution != "" {
    line = $0
    sub(/^ +/, " ", line)
    caution = caution line
}

list {
    text = text $0
}

END {
    judge_caution()
    if (NR > most)
        print NR " lines"
    if (most != 23 && raised < 3)
        print raised + 0 " cautions are no reason for " most " lines"
    if (text ~ /;/ || (text != "" && text !~ /\.$/))
        print "no whole sentences"
}
