# check_ics.awk - holds a file to what RFC 5545 asks of a calendar of whole days, and to what this program promises:
# POSIX awk. Prints each fault as "point N: why" and ends with status 1; says nothing of a good file.
#
#   LC_ALL=C awk -f check_ics.awk FILE
#
#  1 lines end CR LF, are folded at 75 octets or fewer, and no character of UTF-8 is cut
#  2 the frame: BEGIN and END, PRODID and VERSION once each, a component at least
#  3 each entry has UID, DTSTAMP and DTSTART once; no METHOD
#  4 DTSTART is a DATE by its parameter; DTEND, where there is one, is a later DATE
#  5 DTSTAMP is in UTC
#  6 no UID twice in the file
#  7 TEXT: commas and semicolons escaped, no other escape but of a backslash and a line break, no control characters
#  8 the day does not count as busy
#  9 an alarm has ACTION and TRIGGER, one that shows something DESCRIPTION
# 10 no time zones
# 11 each date is a day that exists

function fault(point, why) {
    print "point " point ": " why (line == "" ? "" : ": " line)
    bad = 1
}

function days_of(month, year) {
    if (month == 2)
        return year % 4 == 0 && year % 100 != 0 || year % 400 == 0 ? 29 : 28
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31
}

# A DATE, or a DATE-TIME in UTC, that exists.
function check_day(text, point,    year, month, day) {
    if (text !~ /^[0-9][0-9][0-9][0-9][0-9][0-9][0-9][0-9]/) {
        fault(point, "no date")
        return
    }
    year = substr(text, 1, 4) + 0
    month = substr(text, 5, 2) + 0
    day = substr(text, 7, 2) + 0
    if (month < 1 || month > 12 || day < 1 || day > days_of(month, year))
        fault(11, "no such day")
}

function check_text(text,    at, char, next_char) {
    for (at = 1; at <= length(text); at++) {
        char = substr(text, at, 1)
        next_char = substr(text, at + 1, 1)
        if (char == "\\") {
            if (next_char == "" || index("\\;,nN", next_char) == 0)
                fault(7, "an escape of nothing")
            at++
        } else if (char == "," || char == ";")
            fault(7, "not escaped")
        else if (char ~ /[\001-\010\012-\037\177]/)
            fault(7, "a control character")
    }
}

# One content line, unfolded.
function content(    colon, name, parameters, value, semicolon) {
    colon = index(line, ":")
    if (colon < 2) {
        fault(2, "no property")
        return
    }
    name = substr(line, 1, colon - 1)
    value = substr(line, colon + 1)
    semicolon = index(name, ";")
    parameters = semicolon > 0 ? substr(name, semicolon) : ""
    name = semicolon > 0 ? substr(name, 1, semicolon - 1) : name
    if (name !~ /^[A-Z-]+$/)
        fault(2, "no name of a property")
    if (over)
        fault(2, "something after the end")
    if (!begun && line != "BEGIN:VCALENDAR")
        fault(2, "does not begin with the calendar")
    begun = 1
    if (parameters ~ /TZID/ || value == "VTIMEZONE")
        fault(10, "a time zone")
    if (name == "BEGIN") {
        depth++
        inside[depth] = value
        if (value == "VEVENT" || value == "VALARM")
            for (key in seen)
                if (index(key, value SUBSEP) == 1)
                    delete seen[key]
        if (value == "VEVENT") {
            events++
            start = finish = ""
        }
        action = ""
        return
    }
    if (name == "END") {
        if (depth == 0 || inside[depth] != value)
            fault(2, "the end of nothing")
        close_part(value)
        depth--
        over = depth == 0
        return
    }
    seen[inside[depth], name]++
    property(inside[depth], name, parameters, value)
}

function property(where, name, parameters, value) {
    if (name == "METHOD")
        fault(3, "a method")
    if (name == "DTSTART" || name == "DTEND") {
        if (parameters !~ /;VALUE=DATE(;|$)/ || value !~ /^[0-9]+$/ || length(value) != 8)
            fault(4, "not a DATE")
        check_day(value, 11)
        if (name == "DTSTART")
            start = value
        else
            finish = value
    }
    if (name == "DTSTAMP") {
        if (value !~ /^[0-9]+T[0-9]+Z$/ || length(value) != 16)
            fault(5, "not in UTC")
        check_day(value, 5)
    }
    if (name == "UID") {
        if (value in uid)
            fault(6, "the UID of another entry")
        uid[value] = 1
    }
    if (name == "VERSION" && value != "2.0")
        fault(2, "another version")
    if (name == "TRANSP" && value != "TRANSPARENT")
        fault(8, "counts as busy")
    if (name == "SUMMARY" || name == "DESCRIPTION" || name == "UID")
        check_text(value)
    if (name == "ACTION")
        action = value
}

function once(where, name, point) {
    if (seen[where, name] != 1)
        fault(point, where " has " seen[where, name] + 0 " " name)
}

function close_part(part) {
    line = ""
    if (part == "VCALENDAR") {
        once(part, "PRODID", 2)
        once(part, "VERSION", 2)
        if (events == 0)
            fault(2, "a calendar of nothing")
    }
    if (part == "VEVENT") {
        once(part, "UID", 3)
        once(part, "DTSTAMP", 3)
        once(part, "DTSTART", 3)
        once(part, "TRANSP", 8)
        if (finish != "" && finish <= start)
            fault(4, "ends before it is over")
    }
    if (part == "VALARM") {
        once(part, "ACTION", 9)
        once(part, "TRIGGER", 9)
        if (action == "DISPLAY")
            once(part, "DESCRIPTION", 9)
    }
}

# A character of UTF-8 begins with 0 to 177 or 302 to 364 in octal; 200 to 277 go on with it.
function check_whole(text,    at, char, left) {
    left = 0
    for (at = 1; at <= length(text); at++) {
        char = substr(text, at, 1)
        if (index(further, char) > 0)
            left--
        else {
            if (left != 0)
                return 0
            left = index(two, char) > 0 ? 1 : index(three, char) > 0 ? 2 : index(four, char) > 0 ? 3 : 0
        }
        if (left < 0)
            return 0
    }
    return left == 0
}

BEGIN {
    for (code = 128; code < 192; code++)
        further = further sprintf("%c", code)
    for (code = 194; code < 224; code++)
        two = two sprintf("%c", code)
    for (code = 224; code < 240; code++)
        three = three sprintf("%c", code)
    for (code = 240; code < 245; code++)
        four = four sprintf("%c", code)
}

{
    physical = $0
    if (physical !~ /\r$/) {
        line = physical
        fault(1, "does not end CR LF")
    }
    sub(/\r$/, "", physical)
    if (length(physical) > 75) {
        line = physical
        fault(1, length(physical) " octets")
    }
    if (!check_whole(physical)) {
        line = physical
        fault(1, "a character is cut")
    }
    if (physical ~ /^[ \t]/) {
        whole = whole substr(physical, 2)
        next
    }
    if (NR > 1) {
        line = whole
        content()
    }
    whole = physical
}

END {
    line = whole
    if (NR > 0)
        content()
    line = ""
    if (NR == 0 || depth != 0 || !over)
        fault(2, "has no end")
    exit bad
}
