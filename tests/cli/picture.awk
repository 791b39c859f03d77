# picture.awk - prints what no picture of the program may have; nothing when all is well.
#
# Only shapes, words and one pattern: no scripts, styles, links, pictures or colours, and no place that
# is no number. All words are black, and no box is so dark that they could not be read: #aa has a
# contrast of 9 to 1. No words lie on others: a letter is half its size wide here, most are wider.

function value(element, name) {
    if (!match(element, " " name "=\"[^\"]*\""))
        return ""
    return substr(element, RSTART + length(name) + 3, RLENGTH - length(name) - 4)
}

function grey(colour, third) {
    if (colour !~ /^#[0-9a-f]+$/ || (length(colour) != 4 && length(colour) != 7))
        return 0
    third = (length(colour) - 1) / 3
    return substr(colour, 2, third) == substr(colour, 2 + third, third) &&
        substr(colour, 2, third) == substr(colour, 2 + 2 * third, third)
}

function colour(element, name, paint) {
    paint = value(element, name)
    if (paint != "" && paint != "none" && paint != "url(#hatch)" && !grey(paint))
        print "a colour: " paint
}

function word(element, words, size, wide, left, foot, i) {
    gsub(/&[a-z]*;/, "+", words)
    size = value(element, "font-size") + 0
    wide = length(words) * size / 2
    left = value(element, "x") + 0
    foot = value(element, "y") + 0
    if (value(element, "text-anchor") == "middle")
        left -= wide / 2
    else if (value(element, "text-anchor") == "end")
        left -= wide
    for (i = 1; i <= said; i++)
        if (left < right_of[i] && left_of[i] < left + wide && foot - 0.7 * size < foot_of[i] && top_of[i] < foot)
            print words " on " words_of[i]
    said++
    left_of[said] = left
    right_of[said] = left + wide
    foot_of[said] = foot
    top_of[said] = foot - 0.7 * size
    words_of[said] = words
}

{
    n = split($0, piece, "<")
    for (i = 2; i <= n; i++) {
        end = index(piece[i], ">")
        element = substr(piece[i], 1, end)
        if (element ~ /^\//)
            continue
        elements++
        if (element !~ /^(svg|title|desc|defs|pattern|path|rect|line|circle|polyline|text)[ >\/]/)
            print "more than shapes: " element
        if (element ~ /(x|y|x1|x2|y1|y2|cx|cy|width|height|points)="[^"]*(nan|inf)/)
            print "no number: " element
        colour(element, "fill")
        colour(element, "stroke")
        if (element ~ /^rect / && value(element, "fill") ~ /^#[0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f][0-9a-f]$/ &&
            value(element, "fill") !~ /^#[a-f]/)
            print "a dark box: " element
        if (element ~ /^text /) {
            if (value(element, "fill") != "")
                print "words that are not black: " element
            word(element, substr(piece[i], end + 1))
        }
    }
}

END {
    if (elements < 4 || said == 0)
        print "nothing drawn"
}
