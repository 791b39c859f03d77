#!/bin/sh
# Pictures of sweeps: valid XML, nothing from elsewhere, drawn within their edges, not blank, words large enough.
# Usage: test_svg.sh BUILD
set -eu
program=$(cd "$1" && pwd)/holdwater
for tool in xmllint rsvg-convert; do
    command -v $tool >/dev/null || { echo "skipped: pictures, as there is no $tool"; exit 0; }
done
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
checks=0

# window FROM WIDTH PIXELS X: that strip of the picture at hand, so many pixels wide and at that place of another.
window() {
    sed "1s/viewBox=\"0 0 400 $height\"/viewBox=\"$1 0 $2 $height\" x=\"$4\" width=\"$3\" height=\"$pixels_high\"/" \
        "$name.svg"
}

# render PIXELS: strip.svg as a PNG; the name of an empty one of its size is in $empty.
render() {
    empty=empty-$1-$pixels_high
    rsvg-convert -b white strip.svg -o strip.png || fail "not drawn"
    [ -e "$empty.png" ] || {
        printf '<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s"></svg>\n' "$1" "$pixels_high" >empty.svg
        rsvg-convert -b white empty.svg -o "$empty.png"
    }
    # the size stands behind the name of the first chunk, in four bytes each
    size=$(od -An -j16 -N8 -tu1 strip.png | awk '{ print ($1 * 256 + $2) * 65536 + $3 * 256 + $4, ($5 * 256 + $6) * 65536 + $7 * 256 + $8 }')
    [ "$size" = "$1 $pixels_high" ] || fail "size $size, not $1 $pixels_high"
}

fail() {
    echo "$name: $*" >&2
    exit 1
}

# draw STATUS NAME WORD...: makes NAME.svg and holds it to everything that every picture is held to.
draw() {
    expected=$1
    name=$2
    shift 2
    status=0
    "$program" "$@" --format svg >"$name.svg" 2>"$name.err" || status=$?
    [ "$status" -eq "$expected" ] || fail "status $status"
    [ ! -s "$name.err" ] || fail "$(cat "$name.err")"
    xmllint --noout --nonet "$name.svg" || fail "not XML"
    grep -q '^<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 [0-9]*" role="img" ' "$name.svg" ||
        fail "no viewBox or role"
    [ "$(xmllint --xpath 'count(/*/*[local-name()="title" or local-name()="desc"][string-length() > 9])' \
        "$name.svg")" -eq 2 ] || fail "nothing for those who cannot see"
    # shapes, words and one pattern: no scripts, styles, links, pictures, colours; no place that is no number
    [ "$(sed 's/<\([a-z]*\)/\n<\1\n/g' "$name.svg" | grep '^<[a-z]' | sort -u |
        grep -Evx '<(svg|title|desc|defs|pattern|path|rect|line|circle|polyline|text)')" = '' ] || fail "more than shapes"
    ! grep -Eq '(x|y|x1|x2|y1|y2|cx|cy|width|height|points)="[^"]*(nan|inf)' "$name.svg" || fail "no number"
    ! grep -Eo '(fill|stroke)="[^"]*"' "$name.svg" |
        grep -Evq '"(none|url\(#hatch\)|#([0-9a-f])\2\2|#([0-9a-f]{2})\3\3)"' || fail "a colour"
    ! grep -o 'font-size="[0-9.]*"' "$name.svg" | awk -F'"' '$2 < 12' | grep -q . || fail "small words"
    height=$(sed -n '1s/.*viewBox="0 0 400 \([0-9]*\)".*/\1/p' "$name.svg")
    # as on a telephone; and beyond both edges, where nothing may be
    pixels_high=$((height * 9 / 10))
    window 0 400 360 0 >strip.svg
    render 360
    ! cmp -s strip.png "$empty.png" || fail "blank"
    {
        printf '<svg xmlns="http://www.w3.org/2000/svg" width="180" height="%s">\n' "$pixels_high"
        window -100 100 90 0
        window 400 100 90 90
        echo '</svg>'
    } >strip.svg
    render 180
    cmp -s strip.png "$empty.png" || fail "words or lines beyond an edge"
    checks=$((checks + 10))
}

# has N PATTERN: the picture at hand has N lines with it.
has() {
    n=$(grep -c -e "$2" "$name.svg" || true)
    [ "$n" -eq "$1" ] || fail "$n of '$2', not $1"
    checks=$((checks + 1))
}

reading='ammonia --tan 0.6 --salinity 34'
bath='bath --volume 12L --strength 1%wv --target 6mg/L'
change='change --volume 20gal --now 0.18 --keep 0.18 --floor 0.15 --strength 1mg/mL'

# One axis, two results: each its panel; the caution on the way has a letter and dashed lines to both axes in each.
draw 0 line $reading --ph 7.8:8.6:0.1 --temp 78F --only free,long_ratio
has 2 '<polyline'
has 18 '<circle'
has 8 'stroke-dasharray'
has 3 '>a</text>'
has 1 'CAUTION act-today: Total'
has 1 '>free, mg/L</text>'
has 2 '>ph</text>'
has 2 '>8.6</text>'

# The dashed lines meet where the caution begins: at the published limit on one axis, on the other where the limit is
# asked for backwards. Ticks 0.00 and 0.15, 7.8 and 8.6 tell the scales.
draw 0 limit $reading --ph 7.8:8.6:0.1 --temp 25 --only free_for_limit
has 1 'A bar above a plot shows where its letter holds; dashed'
at_limit=$("$program" $reading --temp 25 --solve ph --for free_for_limit=0.035 --only long_ratio --format csv |
    awk -F, 'NR == 1 { for (i = 1; i <= NF; i++) if ($i == "ph") c = i } NR == 2 { print $c }')
met=$(tr '<' '\n' <"$name.svg" | awk -v limit=0.035 -v ph="$at_limit" '
    function value(name) { match($0, name "=\"[0-9.]*\""); return substr($0, RSTART + length(name) + 2) + 0 }
    /^line/ && /#ccc/ { if (low == "") low = value("y1"); high = value("y1") }
    /^line/ && /#000/ && value("x1") == value("x2") && value("y2") == value("y1") + 4 {
        if (left == "") left = value("x1"); right = value("x1") }
    /dasharray/ && value("x1") == value("x2") { across = value("x1") }
    /dasharray/ && value("y1") == value("y2") { down = value("y1") }
    END { x = 7.8 + (across - left) / (right - left) * 0.8; y = (low - down) / (low - high) * 0.15
          print ((x - ph) ^ 2 < 0.0005 ^ 2 && (y - limit) ^ 2 < 0.0001 ^ 2) ? "met" : x " " ph " " y }')
[ "$met" = met ] || fail "dashed lines at $met"
checks=$((checks + 1))

# No --only: all that apply and are no details.
draw 0 all $reading --ph 7.8:8.6:0.1 --temp 25
has 6 '<polyline'

# Where there is no answer it is hatched, and the line ends.
draw 1 refused $change --take 2gal:24gal:1gal --only after
has 1 'fill="url(#hatch)"'
has 19 '<circle'
has 1 'NO ANSWER more-than-all'
has 1 '>take, gal</text>'
# Downwards the same.
draw 1 downwards $change --take 24gal:2gal:-1gal --only after
has 1 'fill="url(#hatch)"'
has 19 '<circle'

# Where a result does not apply there is no line; a point alone is a dot.
draw 0 gap ammonia --tan 0.6 --ph 8.1 --temp 25 --salinity 0:30:5 --only free_for_limit
has 6 '<circle'
has 1 'No line: it does not apply there.'
draw 0 alone ammonia --tan 0.6 --ph 8.1 --temp 25 --salinity 0.9g/kg:1.1g/kg:0.2g/kg --only free_for_limit
has 1 '<circle'
draw 0 nowhere ammonia --tan 0.6 --ph 7:8:0.5 --temp 25 --salinity 0 --only free_for_limit
has 0 '<polyline'
has 1 'free_for_limit does not apply at any point'

# One point; a flat line; values below zero; many points, which have no dots.
draw 0 point $reading --ph 8.1:8.1:0.1 --temp 25 --only free
has 1 '<circle'
draw 0 flat $bath --temp 72F:82F:2F --source-temp 77F --only dye
has 6 '<circle'
draw 0 below $bath --temp 82F:72F:-2F --source-temp 77F --only temp_gap
has 1 '>-4</text>'
has 1 '>temp_gap, F</text>'
draw 0 many ammonia --tan 0:20:0.05 --ph 8.1 --temp 25 --salinity 30 --only free
has 0 '<circle'
has 1 '<polyline'
# Withheld everywhere: no picture, but why.
draw 3 withheld challenge --volume 75L:190L:12L --fish yes
has 1 'No answer at any point'
has 0 '<polyline'

# Two axes: a cell for each point, its number in it; letters; the darkest have white words.
draw 0 grid $reading --ph 7.8:8.6:0.1 --temp 22:28:1 --only free
has 63 '<rect x='
has 1 '>0.0133</text>'
has 45 '>a</text>'
has 1 'fill="#fff">0.108</text>'
has 0 'fill="#fff">0.0133</text>'
# Without --only the first result alone.
draw 0 first $reading --ph 7.8:8.6:0.1 --temp 22:28:1
has 63 '<rect x='
draw 0 two $reading --ph 7.8:8.6:0.1 --temp 72F:82F:2F --only free,long_ratio
has 108 '<rect x='
has 2 '>across: ph; down: temp, F</text>'
# Cells without an answer: hatched, with a plate for their letter.
draw 1 holes challenge --volume 75L:190L:12L --now 0:4:0.5 --fish no --only mass
has 55 'fill="url(#hatch)"'
has 1 'Hatched: no answer'
draw 0 huge bath --volume 1L:9001L:1000L --strength 1%wv --target 0.1:50:10 --only dye
draw 0 tiny $reading --ph 5:10:0.05 --temp 0:40:10 --only free
draw 0 cell $reading --ph 8:8:1 --temp 25:25:1 --only free
has 1 '<rect x='
draw 0 flat-grid $bath --temp 72F:82F:2F --source-temp 77F:79F:1F --only dye
draw 0 not-there ammonia --tan 0.6 --ph 7:8:0.5 --temp 25 --salinity 0:30:10 --only free_for_limit
has 3 '>-</text>'
has 1 '-: does not apply there.'

# Words from outside are words.
printf 'tank,salinity,temp\n"a<b&c]]>""d",34,25\n' >tanks.csv
draw 0 escaped ammonia --tan 0.6 --ph 7.8:8.6:0.1 --tank 'a<b&c]]>"d' --tanks tanks.csv --only free
has 1 'tank a&lt;b&amp;c\]\]&gt;"d,'

echo "$checks checks passed"
