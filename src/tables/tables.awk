# tables.awk - turns data/references.tsv, limits.tsv, cautions.tsv, topics.tsv, durations.tsv and
# the plans of data/plans into C.
#
#   LC_ALL=C awk -f tables.awk -v kind=h FILE...   the header
#   LC_ALL=C awk -f tables.awk -v kind=c FILE...   the definitions
#
# The files are recognised by their base names and may come in any order. Each has a header line,
# tab-separated columns and at least one row; a line that starts with # is a comment, a blank line
# is skipped. Anything out of order is refused as FILE:LINE: why, with exit status 1 and no output:
# all output is printed at the end, after the last check.
#
# A plan is a file of a folder called plans, and there may be none. Its lines come out as they stand,
# comments too: the program reads them as it reads a keeper's own plan. What is checked here is what
# only a plan of the program's own must have: a known class and source.
#
# In the texts of limits.tsv and cautions.tsv a limit's key in braces, {salt-long}, stands for its
# value as limits.tsv writes it: a text cannot name another figure than the one that is judged by.
# Braces serve nothing else.
#
# POSIX awk only, and the same bytes under every awk: no gsub with backslashes in the replacement,
# no length of an array, no printf of anything but strings and whole numbers.

BEGIN {
    TAB = "\t"
    OTHER = "[^ -~" TAB "]"                # neither printable ASCII nor a tab
    NAME = "^[a-z0-9][a-z0-9-]*$"
    OPTION = "^[a-z0-9][a-z0-9_]*$"
    DECIMAL = "^-?(0|[1-9][0-9]*)([.][0-9]+)?$"
    MADE = "/* Made by tables.awk from the tables of data/: edit those. */"
    BY_ANSWER = "HW_SET_BY_ANSWER"
    MAX_NOTES = 63                         # HW_NOTES: a note is a bit of a uint64_t
    MOST_SENTENCE = 60                     # of a standing note, on a screen
    MOST_PROHIBITION = 54                  # of the same, behind the word Never
    MOST_CAUTION = 156                     # with its heading: two lines
    MOST_NO_ANSWER = 234                   # with its heading: three lines

    columns["references.tsv"] = "key" TAB "class" TAB "text"
    columns["limits.tsv"] = "key" TAB "value" TAB "unit" TAB "averaging" TAB "source" TAB "text"
    columns["cautions.tsv"] = "code" TAB "used_by" TAB "effect" TAB "fact" TAB "source" TAB "list" TAB \
        "brief" TAB "text"

    columns["topics.tsv"] = "word" TAB "asks" TAB "options" TAB "text"
    columns["durations.tsv"] = "key" TAB "parasite" TAB "temp" TAB "class" TAB "source" TAB "text"
    PLAN = "day" TAB "act" TAB "every" TAB "until" TAB "class" TAB "source"

    split("read computed recalled practice ours standard", words, " ")
    for (i in words)
        is_class[words[i]] = 1
    split("practice survey paper society law vet label recalled ours", words, " ")
    for (i in words)
        is_plan_class[words[i]] = 1

    effect_name["standing"] = effect_name["always"] = effect_name["ever"] = "HW_STANDING"
    effect_name["caution"] = "HW_CAUTION"
    effect_name["stretched"] = "HW_STRETCHED"
    effect_name["refused"] = "HW_REFUSED"
    effect_name["withheld"] = "HW_WITHHELD"

    list_name["full"] = list_name["-"] = "HW_LIST_NONE"
    list_name["never"] = "HW_LIST_NEVER"
    list_name["sign"] = "HW_LIST_SIGN"
    list_name["mind"] = "HW_LIST_MIND"
    list_name["last"] = "HW_LIST_LAST"

    setter_name["always"] = "HW_SET_WITH_ANSWER"
    setter_name["ever"] = "HW_SET_EVER"

    n_refs = n_limits = n_cautions = n_topics = n_calcs = n_durations = n_plans = 0
    failed = 0
    if (kind != "h" && kind != "c")
        complain("tables.awk: kind must be h or c")
}

function complain(message) {
    print message | "cat 1>&2"
    close("cat 1>&2")
    failed = 1
    exit 1
}

function refuse(why) {
    complain(FILENAME ":" FNR ": " why)
}

function begin_plan() {
    plan = base
    if (!sub(/[.]tsv$/, "", plan) || plan !~ NAME)
        refuse("a plan is called NAME.tsv: small letters, digits and - only")
    base = "plans/" base
    columns[base] = PLAN
    n_plans++
    plan_name[n_plans] = plan
    n_lines[n_plans] = 0
    at_plan[n_plans] = base
}

FNR == 1 {
    base = FILENAME
    sub(/^.*\//, "", base)
    plan = ""
    if (FILENAME ~ /(^|\/)plans\/[^\/]*$/)
        begin_plan()
    else if (!(base in columns))
        refuse("not references.tsv, limits.tsv, cautions.tsv, topics.tsv, durations.tsv or a plan")
    if (base in path)
        refuse(base " is given twice")
    path[base] = FILENAME
    header_seen = 0
}

$0 ~ OTHER {
    refuse("only printable ASCII and tabs are allowed")
}

index($0, "\\") > 0 {
    refuse("a backslash is not allowed")
}

plan != "" {
    n_lines[n_plans]++
    plan_line[n_plans, n_lines[n_plans]] = $0
}

/^#/ || /^[ \t]*$/ {
    next
}

!header_seen {
    header_seen = 1
    if ($0 != columns[base]) {
        expected = columns[base]
        gsub(TAB, " ", expected)
        refuse("the header must name these columns, with tabs between: " expected)
    }
    n_columns = split(columns[base], column, TAB)
    next
}

{
    n = split($0, cell, TAB)
    if (n != n_columns)
        refuse(n " columns, not " n_columns)
    for (i = 1; i <= n; i++) {
        if (cell[i] == "")
            refuse("column " column[i] " is empty")
        if (cell[i] ~ /^ / || cell[i] ~ / $/)
            refuse("column " column[i] " begins or ends with a space")
    }
    if (plan != "") {
        check_act()
        next
    }
    if (cell[1] !~ NAME)
        refuse("\"" cell[1] "\" is no " column[1] ": small letters, digits and - only")
    if ((base, cell[1]) in line)
        refuse(column[1] " \"" cell[1] "\" was given in line " line[base, cell[1]])
    line[base, cell[1]] = FNR
    rows[base]++
}

base == "references.tsv" {
    if (!(cell[2] in is_class))
        refuse("\"" cell[2] "\" is no class: read, computed, recalled, practice, ours or standard")
    n_refs++
    ref_key[n_refs] = cell[1]
    ref_class[n_refs] = cell[2]
    ref_text[n_refs] = cell[3]
    is_ref[cell[1]] = 1
}

base == "limits.tsv" {
    if (cell[2] !~ DECIMAL)
        refuse("\"" cell[2] "\" is no decimal number such as 0.035")
    n_limits++
    limit_key[n_limits] = cell[1]
    limit_value[n_limits] = cell[2]
    limit_unit[n_limits] = cell[3]
    limit_averaging[n_limits] = cell[4]
    limit_source[n_limits] = cell[5]
    limit_text[n_limits] = cell[6]
    limit_line[n_limits] = FNR
    figure[cell[1]] = cell[2]
}

base == "cautions.tsv" {
    if (!(cell[3] in effect_name))
        refuse("\"" cell[3] "\" is no effect: standing, always, ever, caution, stretched, refused " \
            "or withheld")
    if (cell[4] != "-" && cell[4] !~ NAME)
        refuse("\"" cell[4] "\" is no fact: small letters, digits and - only")
    standing = effect_name[cell[3]] == "HW_STANDING"
    if (!(cell[6] in list_name))
        refuse("\"" cell[6] "\" is no list: never, sign, mind, last, full or -")
    if (standing == (cell[6] == "-"))
        refuse("standing notes have a list, others have -")
    if (standing && (cell[6] == "full") != (cell[7] == "-"))
        refuse("a standing note has a brief sentence, or the list full")
    n_cautions++
    n_users = split(cell[2], user, ",")
    for (i = 1; i <= n_users; i++) {
        calc = user[i]
        setter = cell[3] in setter_name ? setter_name[cell[3]] : BY_ANSWER
        if (calc ~ /[?+]$/) { # by this calculation not always, or ever
            if (setter == BY_ANSWER)
                refuse("\"" calc "\" in used_by: the effect is not always or ever")
            setter = calc ~ /[?]$/ ? BY_ANSWER : setter_name["ever"]
            sub(/[?+]$/, "", calc)
        }
        if (calc !~ NAME)
            refuse("\"" calc "\" in used_by is no calculation: names, commas, no spaces")
        if ((calc, n_cautions) in uses)
            refuse("used_by names " calc " twice")
        uses[calc, n_cautions] = 1
        tellers[calc, cell[4]]++
        if (!(calc in n_notes)) {
            n_calcs++
            calc_name[n_calcs] = calc
            n_notes[calc] = 0
        }
        n_notes[calc]++
        if (n_notes[calc] > MAX_NOTES)
            refuse(calc " has more than " MAX_NOTES " notes")
        note[calc, n_notes[calc]] = n_cautions
        note_setter[calc, n_notes[calc]] = setter
    }
    caution_code[n_cautions] = cell[1]
    caution_used_by[n_cautions] = cell[2]
    gsub(/[?+]/, "", caution_used_by[n_cautions])
    caution_effect[n_cautions] = cell[3]
    caution_fact[n_cautions] = cell[4]
    caution_source[n_cautions] = cell[5]
    caution_list[n_cautions] = cell[6]
    caution_brief[n_cautions] = cell[7]
    caution_text[n_cautions] = cell[8]
    caution_line[n_cautions] = FNR
}

# An act of a plan of the program's own. Days and names are read by the program, and tested there.
function check_act() {
    if (!(cell[5] in is_plan_class))
        refuse("\"" cell[5] "\" is no class of an act")
    rows[base]++
    cited[base, rows[base]] = cell[6]
    cited_line[base, rows[base]] = FNR
}

base == "durations.tsv" {
    if (!(cell[4] in is_plan_class))
        refuse("\"" cell[4] "\" is no class of an act")
    n_durations++
    for (i = 2; i <= 6; i++)
        duration[n_durations, i] = cell[i]
    duration_line[n_durations] = FNR
}

base == "topics.tsv" {
    if (cell[2] == "-" && cell[3] == "-")
        refuse("\"" cell[1] "\" leads nowhere")
    for (i = 2; i <= 3; i++) {
        n_words = split(cell[i], word, ",")
        for (k = 1; k <= n_words && cell[i] != "-"; k++)
            if (word[k] !~ (i == 2 ? NAME : OPTION))
                refuse("\"" word[k] "\" in " column[i] " is no name: names, commas, no spaces")
    }
    n_topics++
    topic_word[n_topics] = cell[1]
    topic_asks[n_topics] = cell[2]
    topic_options[n_topics] = cell[3]
    topic_text[n_topics] = cell[4]
    topic_line[n_topics] = FNR
}

function check_file(name) {
    if (!(name in path))
        complain("tables.awk: " name " is not given, or empty")
    if (!(name in rows))
        complain(path[name] ":1: no rows")
}

function check_source(name, at, key) {
    if (!(key in is_ref))
        complain(path[name] ":" at ": source \"" key "\" is no key of references.tsv")
}

# A fact is what several cautions of one calculation tell, more or less gravely.
function check_fact(i,    c) {
    for (c = 1; c <= n_calcs; c++)
        if ((calc_name[c], i) in uses && tellers[calc_name[c], caution_fact[i]] > 1)
            return
    complain(path["cautions.tsv"] ":" caution_line[i] ": no other caution of the calculation tells " \
        "the fact \"" caution_fact[i] "\"")
}

# What a text of one screen says is short.
function check_brief(i,    effect, heading) {
    effect = effect_name[caution_effect[i]]
    if (index(caution_brief[i], ";") > 0)
        complain(path["cautions.tsv"] ":" caution_line[i] ": a semicolon in a brief sentence")
    if (effect == "HW_STANDING") {
        check_sentences(i)
        return
    }
    heading = caution_code[i] ": "
    if (effect == "HW_REFUSED" || effect == "HW_WITHHELD") {
        heading = (effect == "HW_REFUSED" ? "NO ANSWER " : "WITHHELD ") heading
        check_room(i, said(i), MOST_NO_ANSWER - length(heading))
    } else {
        check_room(i, said(i), MOST_CAUTION - length("CAUTION " heading))
    }
}

function said(i) {
    return caution_brief[i] == "-" ? caution_text[i] : caution_brief[i]
}

function check_room(i, words, most) {
    if (length(words) > most)
        complain(path["cautions.tsv"] ":" caution_line[i] ": " caution_code[i] " takes " \
            length(words) " characters in a text of one screen, and " most " are room for it")
}

# Each sentence of a standing note by itself. A prohibition is one: Never stands before it.
function check_sentences(i,    n, k, sentence) {
    n = split(caution_brief[i], sentence, "[.] ")
    if (caution_list[i] == "never" && n > 1)
        complain(path["cautions.tsv"] ":" caution_line[i] ": " n " sentences on the list never")
    for (k = 1; k < n; k++)
        check_room(i, sentence[k] ".", MOST_SENTENCE)
    check_room(i, sentence[n], caution_list[i] == "never" ? MOST_PROHIBITION : MOST_SENTENCE)
}

# Each calculation that a word leads to has cautions.
function check_asks(i,    n, k, calc) {
    n = split(topic_asks[i], calc, ",")
    for (k = 1; k <= n && topic_asks[i] != "-"; k++)
        if (!(calc[k] in n_notes))
            complain(path["topics.tsv"] ":" topic_line[i] ": \"" calc[k] \
                "\" is no calculation of cautions.tsv")
}

# filled("above {salt-long}", ...) is "above 0.035". No patterns: to some awks a brace is special.
function filled(text, name, at,    out, from, to, key) {
    out = ""
    for (from = index(text, "{"); from > 0; from = index(text, "{")) {
        to = index(text, "}")
        if (to < from)
            complain(path[name] ":" at ": a brace without the other")
        key = substr(text, from + 1, to - from - 1)
        if (!(key in figure))
            complain(path[name] ":" at ": {" key "} is no key of limits.tsv")
        out = out substr(text, 1, from - 1) figure[key]
        text = substr(text, to + 1)
    }
    if (index(text, "}") > 0)
        complain(path[name] ":" at ": a brace without the other")
    return out text
}

# quoted("a \"b\"?") is the text as a C string; no trigraph can arise, as each ? is escaped.
function quoted(text,    out, at, char) {
    out = ""
    for (at = 1; at <= length(text); at++) {
        char = substr(text, at, 1)
        if (char == "\"" || char == "?")
            out = out "\\"
        out = out char
    }
    return "\"" out "\""
}

function lower(name) {
    gsub(/-/, "_", name)
    return name
}

function upper(name) {
    return toupper(lower(name))
}

function quoted_or_null(text) {
    return text == "-" ? "NULL" : quoted(text)
}

function print_header(    c, i, calc, big) {
    print MADE
    print "#ifndef HW_TABLES_H"
    print "#define HW_TABLES_H"
    print ""
    print "#include \"calc/calc.h\""
    print ""
    print "struct hw_reference {"
    print "    const char *key, *class_name, *text;"
    print "};"
    print ""
    print "enum hw_reference_key {"
    for (i = 1; i <= n_refs; i++)
        print "    HW_REF_" upper(ref_key[i]) ","
    print "    HW_REFERENCES"
    print "};"
    print ""
    print "extern const struct hw_reference hw_references[];"
    print ""
    print "struct hw_limit {"
    print "    const char *key;"
    print "    double value;"
    print "    const char *unit, *averaging, *source, *text;"
    print "};"
    print ""
    print "enum hw_limit_key {"
    for (i = 1; i <= n_limits; i++)
        print "    HW_LIMIT_" upper(limit_key[i]) ","
    print "    HW_LIMITS"
    print "};"
    print ""
    print "extern const struct hw_limit hw_limits[];"
    print ""
    for (i = 1; i <= n_limits; i++)
        print "#define HW_FIGURE_" upper(limit_key[i]) " " quoted(limit_value[i])
    print ""
    print "struct hw_caution {"
    print "    const char *code, *used_by, *fact, *source, *brief, *text;"
    print "    enum hw_effect effect;"
    print "};"
    print ""
    print "struct hw_topic {"
    print "    const char *word, *asks, *options, *text;"
    print "};"
    print ""
    print "enum { HW_TOPICS = " n_topics " };"
    print ""
    print "extern const struct hw_topic hw_topics[];"
    print ""
    print "enum { HW_CAUTIONS = " n_cautions " };"
    print ""
    print "extern const struct hw_caution hw_cautions[];"
    print ""
    print "struct hw_duration {"
    print "    const char *parasite, *temp, *class_name, *source, *text;"
    print "};"
    print ""
    print "enum { HW_DURATIONS = " n_durations " };"
    print ""
    print "extern const struct hw_duration hw_durations[];"
    print ""
    print "struct hw_plan {"
    print "    const char *name;"
    print "    const char *const *lines; /* NULL ends them */"
    print "};"
    print ""
    print "extern const struct hw_plan hw_plans[]; /* a NULL name ends the list */"
    for (c = 1; c <= n_calcs; c++) {
        calc = calc_name[c]
        big = upper(calc)
        print ""
        print "enum hw_" lower(calc) "_note {"
        for (i = 1; i <= n_notes[calc]; i++)
            print "    HW_" big "_NOTE_" upper(caution_code[note[calc, i]]) ","
        print "    HW_" big "_NOTES"
        print "};"
        print ""
        print "extern const struct hw_note hw_" lower(calc) "_notes[];"
    }
    print ""
    print "#endif"
}

# The later notes of a calculation that tell the fact of its note i, as bits in C.
function hidden(calc, i,    fact, out, k) {
    fact = caution_fact[note[calc, i]]
    out = ""
    for (k = i + 1; k <= n_notes[calc] && fact != "-"; k++)
        if (caution_fact[note[calc, k]] == fact)
            out = out (out == "" ? "" : " | ") "UINT64_C(1) << HW_" upper(calc) "_NOTE_" \
                upper(caution_code[note[calc, k]])
    return out
}

function print_durations(    i) {
    print ""
    print "const struct hw_duration hw_durations[] = {"
    for (i = 1; i <= n_durations; i++) {
        print "    {"
        print "        .parasite = " quoted(duration[i, 2]) ","
        print "        .temp = " quoted_or_null(duration[i, 3]) ","
        print "        .class_name = " quoted(duration[i, 4]) ","
        print "        .source = " quoted(duration[i, 5]) ","
        print "        .text = " quoted(duration[i, 6]) ","
        print "    },"
    }
    print "};"
}

function print_plans(    i, k) {
    for (i = 1; i <= n_plans; i++) {
        print ""
        print "static const char *const plan_" lower(plan_name[i]) "[] = {"
        for (k = 1; k <= n_lines[i]; k++)
            print "    " quoted(plan_line[i, k]) ","
        print "    NULL,"
        print "};"
    }
    print ""
    print "const struct hw_plan hw_plans[] = {"
    for (i = 1; i <= n_plans; i++)
        print "    {" quoted(plan_name[i]) ", plan_" lower(plan_name[i]) "},"
    print "    {NULL, NULL},"
    print "};"
}

function print_definitions(    c, i, k, calc, big) {
    print MADE
    print "#include \"tables.h\""
    print ""
    print "const struct hw_reference hw_references[] = {"
    for (i = 1; i <= n_refs; i++) {
        print "    [HW_REF_" upper(ref_key[i]) "] = {"
        print "        .key = " quoted(ref_key[i]) ","
        print "        .class_name = " quoted(ref_class[i]) ","
        print "        .text = " quoted(ref_text[i]) ","
        print "    },"
    }
    print "};"
    print ""
    print "const struct hw_limit hw_limits[] = {"
    for (i = 1; i <= n_limits; i++) {
        print "    [HW_LIMIT_" upper(limit_key[i]) "] = {"
        print "        .key = " quoted(limit_key[i]) ","
        print "        .value = " limit_value[i] ","
        print "        .unit = " quoted(limit_unit[i]) ","
        print "        .averaging = " quoted(limit_averaging[i]) ","
        print "        .source = " quoted(limit_source[i]) ","
        print "        .text = " quoted(limit_text[i]) ","
        print "    },"
    }
    print "};"
    print ""
    print "const struct hw_caution hw_cautions[] = {"
    for (i = 1; i <= n_cautions; i++) {
        print "    {"
        print "        .code = " quoted(caution_code[i]) ","
        print "        .used_by = " quoted(caution_used_by[i]) ","
        print "        .fact = " quoted_or_null(caution_fact[i]) ","
        print "        .source = " quoted_or_null(caution_source[i]) ","
        print "        .brief = " quoted_or_null(caution_brief[i]) ","
        print "        .text = " quoted(caution_text[i]) ","
        print "        .effect = " effect_name[caution_effect[i]] ","
        print "    },"
    }
    print "};"
    print ""
    print "const struct hw_topic hw_topics[] = {"
    for (i = 1; i <= n_topics; i++) {
        print "    {"
        print "        .word = " quoted(topic_word[i]) ","
        print "        .asks = " quoted_or_null(topic_asks[i]) ","
        print "        .options = " quoted_or_null(topic_options[i]) ","
        print "        .text = " quoted(topic_text[i]) ","
        print "    },"
    }
    print "};"
    print_durations()
    print_plans()
    for (c = 1; c <= n_calcs; c++) {
        calc = calc_name[c]
        big = upper(calc)
        print ""
        print "const struct hw_note hw_" lower(calc) "_notes[] = {"
        for (i = 1; i <= n_notes[calc]; i++) {
            k = note[calc, i]
            print "    [HW_" big "_NOTE_" upper(caution_code[k]) "] = {"
            print "        .code = " quoted(caution_code[k]) ","
            print "        .text = " quoted(caution_text[k]) ","
            print "        .brief = " quoted_or_null(caution_brief[k]) ","
            print "        .fact = " quoted_or_null(caution_fact[k]) ","
            print "        .source = " quoted_or_null(caution_source[k]) ","
            print "        .effect = " effect_name[caution_effect[k]] ","
            print "        .setter = " note_setter[calc, i] ","
            print "        .list = " list_name[caution_list[k]] ","
            if (hidden(calc, i) != "")
                print "        .hides = " hidden(calc, i) ","
            print "    },"
        }
        print "};"
    }
}

END {
    if (failed)
        exit 1
    check_file("references.tsv")
    check_file("limits.tsv")
    check_file("cautions.tsv")
    check_file("topics.tsv")
    check_file("durations.tsv")
    for (i = 1; i <= n_topics; i++)
        check_asks(i)
    for (i = 1; i <= n_durations; i++)
        check_source("durations.tsv", duration_line[i], duration[i, 5])
    for (i = 1; i <= n_plans; i++) {
        check_file(at_plan[i])
        for (k = 1; k <= rows[at_plan[i]]; k++)
            check_source(at_plan[i], cited_line[at_plan[i], k], cited[at_plan[i], k])
    }
    for (i = 1; i <= n_limits; i++) {
        check_source("limits.tsv", limit_line[i], limit_source[i])
        limit_text[i] = filled(limit_text[i], "limits.tsv", limit_line[i])
    }
    for (i = 1; i <= n_cautions; i++) {
        if (caution_source[i] != "-")
            check_source("cautions.tsv", caution_line[i], caution_source[i])
        if (caution_fact[i] != "-")
            check_fact(i)
        caution_text[i] = filled(caution_text[i], "cautions.tsv", caution_line[i])
        caution_brief[i] = filled(caution_brief[i], "cautions.tsv", caution_line[i])
        check_brief(i)
    }
    if (kind == "h")
        print_header()
    else
        print_definitions()
}
