#!/bin/sh
# Pictures of sweeps: valid XML, nothing from elsewhere, drawn within their edges, not blank, words large enough; on A4 one
# page, at its size on paper; heavy lines where cautions begin.
# Usage: test_svg.sh BUILD. Each third picture is rendered; all of them with PICTURES=all.
set -eu
. tests/scratch.sh
program=$build/holdwater
here=$(cd "$(dirname "$0")" && pwd)
for tool in xmllint rsvg-convert; do
    command -v $tool >/dev/null || { echo "skipped: pictures, as there is no $tool"; exit 0; }
done
cd "$scratch"
checks=0
pictures=0

# window FROM WIDTH PIXELS X: that strip of the picture at hand, so many pixels wide and at that place of another.
window() {
    sed "1s/viewBox=\"0 0 400 $height\"/viewBox=\"$1 0 $2 $height\" x=\"$4\" width=\"$3\" height=\"$pixels_high\"/" \
        "$name.svg"
}

# render PIXELS [OPTION...]: strip.svg as a PNG; the name of an empty one of its size is in $empty.
render() {
    pixels=$1
    shift
    empty=empty-$pixels-$pixels_high
    rsvg-convert -b white "$@" strip.svg -o strip.png || fail "not drawn"
    set -- "$pixels"
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

# make STATUS NAME WORD...: makes NAME.svg and holds it to everything that every picture is held to.
make() {
    expected=$1
    name=$2
    shift 2
    status=0
    "$program" "$@" --format svg >"$name.svg" 2>"$name.err" || status=$?
    [ "$status" -eq "$expected" ] || fail "status $status"
    [ ! -s "$name.err" ] || fail "$(cat "$name.err")"
    [ "$(xmllint --nonet --xpath 'count(/*/*[local-name()="title" or local-name()="desc"][string-length() > 9])' \
        "$name.svg")" = 2 ] || fail "not XML, or nothing for those who cannot see"
    awk -f "$here/picture.awk" "$name.svg" >wrong.txt
    [ ! -s wrong.txt ] || fail "$(head -n 1 wrong.txt)"
    checks=$((checks + 9))
}

# rendered: whether the picture at hand is.
rendered() {
    pictures=$((pictures + 1))
    [ "${PICTURES:-some}" = all ] || [ $((pictures % 3)) -eq 1 ]
}

# draw STATUS NAME WORD...: the same for a telephone.
draw() {
    make "$@"
    grep -q '^<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 [0-9]*" role="img" ' "$name.svg" ||
        fail "no viewBox or role"
    ! grep -o 'font-size="[0-9.]*"' "$name.svg" | awk -F'"' '$2 < 12' | grep -q . || fail "small words"
    height=$(sed -n '1s/.*viewBox="0 0 400 \([0-9]*\)".*/\1/p' "$name.svg")
    checks=$((checks + 3))
    rendered || return 0
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
    checks=$((checks + 2))
}

# print_a4 LEAST STATUS NAME WORD...: the same for one A4 page, with words of LEAST points or more.
print_a4() {
    least=$1
    shift
    make "$@" --page a4
    paper=$(sed -n '1s/.* width="\([0-9]*mm\)" height="\([0-9]*mm\)" viewBox="0 0 \([0-9.]*\) \([0-9.]*\)" role="img".*/\1 \2 \3 \4/p' \
        "$name.svg")
    case $paper in
    '210mm 297mm '*) pixels_wide=1240 pixels_high=1754 ;;
    '297mm 210mm '*) pixels_wide=1754 pixels_high=1240 ;;
    *) fail "no A4 page: $paper" ;;
    esac
    # a unit in points, by the width and by the height of the page
    echo "$paper" | tr -d m | awk '{ x = $1 / 25.4 * 72 / $3; y = $2 / 25.4 * 72 / $4; exit x / y > 1.0001 || y / x > 1.0001 }' ||
        fail "stretched"
    small=$(grep -o 'font-size="[0-9.]*"' "$name.svg" | tr -d '"' | awk -F= -v paper="$paper" -v least="$least" '
        BEGIN { split(paper, p, " "); point = p[1] / 25.4 * 72 / p[3] }
        $2 * point < least - 0.001 { print $2 * point }' | head -n 1)
    [ "$small" = '' ] || fail "words of $small points"
    checks=$((checks + 5))
    rendered || return 0
    cp "$name.svg" strip.svg
    render "$pixels_wide" -w "$pixels_wide" -h "$pixels_high"
    ! cmp -s strip.png "$empty.png" || fail "blank"
    # with the page covered but for 5 mm at its edges, which printers leave blank, nothing is left
    wide=$(echo "$paper" | cut -d' ' -f3)
    high=$(echo "$paper" | cut -d' ' -f4)
    pixels_high=1000
    sed -e "1s/ width=.* role/ width=\"1000\" height=\"1000\" viewBox=\"-200 -200 1200 1200\" role/" \
        -e "s|^</svg>|<rect x=\"14.2\" y=\"14.2\" width=\"$(awk "BEGIN { print $wide - 28.4 }")\" height=\"$(awk "BEGIN { print $high - 28.4 }")\" fill=\"#fff\"/></svg>|" \
        "$name.svg" >strip.svg
    render 1000
    cmp -s strip.png "$empty.png" || fail "words or lines beyond the page"
    checks=$((checks + 2))
}

# borders COLUMNS WORD...: in the chart at hand, of one block, heavy lines lie where cautions differ from cell to cell, and
# nowhere else. The cautions are those that csv prints.
borders() {
    columns=$1
    shift
    "$program" "$@" --format csv 2>/dev/null | sed '1d; s/.*,//' >cautions.txt || true
    grep -E '<rect x=.*fill="(#.{6}|url\(#hatch\))" stroke="#888"|stroke-width="2.8"' "$name.svg" | awk -v columns="$columns" '
        function value(name) { match($0, " " name "=\"[^\"]*\""); return substr($0, RSTART + length(name) + 3) + 0 }
        function near(a, b) { return a - b < 0.3 && b - a < 0.3 }
        function expected(x1, y1, x2, y2, i) {
            count++
            for (i = 1; i <= lines; i++)
                if (near(a1[i], x1) && near(b1[i], y1) && near(a2[i], x2) && near(b2[i], y2)) return
            print "no line from " x1 " " y1 " to " x2 " " y2 }
        FILENAME == "cautions.txt" { caution[cautions++] = $0; next }
        /<rect/ && value("height") > 20 { x[cells] = value("x"); y[cells] = value("y"); wide = value("width"); high = value("height"); cells++ }
        /<line/ { lines++; a1[lines] = value("x1"); b1[lines] = value("y1"); a2[lines] = value("x2"); b2[lines] = value("y2") }
        END {
            if (cells != cautions) print cells " cells, " cautions " answers"
            for (k = 0; k < cells; k++) {
                if (k % columns && caution[k] != caution[k - 1]) expected(x[k], y[k], x[k], y[k] + high)
                if (k >= columns && caution[k] != caution[k - columns]) expected(x[k], y[k], x[k] + wide, y[k])
            }
            if (lines != count) print lines " lines, not " count
            if (count < 2) print "nothing to see" }' cautions.txt - >differ.txt
    [ ! -s differ.txt ] || fail "$(head -n 3 differ.txt)"
    checks=$((checks + 2))
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

# One axis, two results: each its panel. Where the graver caution begins the milder one of the same fact ends: in each a
# letter and a bar for both, and one heavy line, with one dashed line to the other axis.
draw 0 line $reading --ph 7.8:8.6:0.1 --temp 78F --only free,long_ratio
has 2 '<polyline.*width="1.6"'
has 18 '<circle'
has 4 'stroke-width="5"'
has 2 'stroke-width="2.8"'
has 2 'stroke-dasharray'
has 3 '>a</text>'
has 1 'CAUTION act-today: Total'
has 1 '>free, mg/L</text>'
has 2 '>ph</text>'
has 2 '>8.6</text>'

# The heavy and the dashed line meet where the caution begins: at the published limit on one axis, on the other where the limit is
# asked for backwards. Ticks 0.00 and 0.15, 7.8 and 8.6 tell the scales.
draw 0 limit $reading --ph 7.8:8.6:0.1 --temp 25 --only free_for_limit
has 1 'A bar above a plot shows where its letter is told. Heavy'
at_limit=$("$program" $reading --temp 25 --solve ph --for free_for_limit=0.035 --only long_ratio --format csv |
    awk -F, 'NR == 1 { for (i = 1; i <= NF; i++) if ($i == "ph") c = i } NR == 2 { print $c }')
met=$(tr '<' '\n' <"$name.svg" | awk -v limit=0.035 -v ph="$at_limit" '
    function value(name) { match($0, name "=\"[0-9.]*\""); return substr($0, RSTART + length(name) + 2) + 0 }
    /^line/ && /#ccc/ && !framed { if (low == "") low = value("y1"); high = value("y1") }
    /^line/ && /#000/ && value("x1") == value("x2") && value("y2") == value("y1") + 4 {
        if (left == "") left = value("x1"); right = value("x1") }
    /^line/ && /#000/ && value("y1") == value("y2") { framed = 1 }
    /stroke-width="2.8"/ && value("x1") == value("x2") { across = value("x1") }
    /dasharray/ && value("y1") == value("y2") { down = value("y1") }
    END { x = 7.8 + (across - left) / (right - left) * 0.8; y = (low - down) / (low - high) * 0.15
          print ((x - ph) ^ 2 < 0.0005 ^ 2 && (y - limit) ^ 2 < 0.0001 ^ 2) ? "met" : x " " ph " " y }')
[ "$met" = met ] || fail "lines at $met"
checks=$((checks + 1))

# No --only: all that apply and are no details; what is the same at every point is told in words.
draw 0 all $reading --ph 7.8:8.6:0.1 --temp 25
has 5 '<polyline.*width="1.6"'
has 1 '>ph_long 8.02 at every point: pH'
# With --full details, long notes and their standing ones too.
draw 0 full $reading --ph 7.8:8.6:0.1 --temp 25 --full
has 2 'mg NH3/L as a'
has 1 '>Not veterinary advice'

# Notes in short: what never to do, what to mind, who knows better.
draw 0 short $bath --temp 72F:82F:2F --source-temp 77F --only temp_gap
has 1 '>never: Never leave a fish'
has 1 '>mind: Gasping'
has 0 'Not veterinary advice'

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
has 0 '<polyline.*width="1.6"'
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
has 1 '<polyline.*width="1.6"'
# Withheld everywhere: no picture, but why.
draw 3 withheld challenge --volume 75L:190L:12L --fish yes
has 1 'No answer at any point'
has 0 '<polyline.*width="1.6"'

# Two axes: a cell for each point, its number in it; letters; heavy lines.
draw 0 grid $reading --ph 7.8:8.6:0.1 --temp 22:28:1 --only free
has 63 '<rect x='
has 1 '>0.0133</text>'
has 45 '>a</text>'
has 1 '>0.108</text>'
has 9 'stroke-width="2.8"'
has 1 '<title id="title">ammonia: ph from 7.8 to 8.6 across, temp from 22 to 28 C down; tan 0.6 mg/L, salinity 34 g/kg</title>'
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

# A record: a dot for each reading used, its line, dashed to the day of the limit; window and limit by their names.
{
    echo 'when,tank,tan mg/L'
    for day in 1 2 3 4 5 6 7; do
        echo "2031-03-0${day}T08:00,birch,0.$((day + 1))$((day % 3))"
    done
} >record.csv
record='trend --rows record.csv --tank birch --of tan --when 2031-03-07T20:00'
draw 0 record $record --limit 1.2 --floor 0.25 --ceiling 1.15
has 7 '<circle'
has 1 '<polyline.*width="1.6"'
has 1 'stroke-width="2.8"'
has 3 'stroke-dasharray'
has 1 '>limit 1.2 mg/L</text>'
has 1 '>floor 0.25 mg/L</text>'
has 1 '>ceiling 1.15 mg/L</text>'
has 1 '<rect.*fill="#[^f].....".*stroke="#888"'
has 1 'CAUTION limit-near'
draw 0 record-short $record --last 2 --floor 0
has 2 '<circle'
has 0 '<polyline'
has 1 '>floor 0 mg/L</text>'
draw 0 record-full $record --ceiling 0.6 --full
has 1 'CAUTION level-outside: The last'

# A4: one page, words of 9 points or more, the columns of a chart side by side, heavy lines on the borders.
print_a4 9 0 a4-curves $reading --ph 7.8:8.6:0.1 --temp 25
has 5 '<polyline.*width="1.6"'
has 5 'stroke-width="2.8"'
print_a4 9 0 a4-curve $reading --ph 7.8:8.6:0.1 --temp 25 --only free
chart="$reading --ph 7.8:8.6:0.1 --temp 22:28:1 --medicine none --only free"
print_a4 9 0 a4-chart $chart
borders 9 $chart
has 1 '>8.6</text>'
chart="$reading --ph 7.4:8.8:0.1 --temp 18:30:1 --medicine none --only free"
print_a4 9 0 a4-columns $chart
borders 15 $chart
chart="bath --volume 3gal --strength 1%wv --target 0.5:6:0.5 --temp 72F:82F:2F --source-temp 77F --only dye"
print_a4 9 0 a4-fahrenheit $chart
borders 12 $chart
chart='challenge --volume 75L:190L:12L --now 0:4:0.5 --fish no --only mass'
print_a4 9 1 a4-holes $chart
borders 11 $chart
print_a4 9 1 a4-refused $change --take 2gal:24gal:1gal
print_a4 9 0 a4-steps dose --volume 75L --kind copper-ionic --salinity 33 --strength 1mg/mL --target 0.19 --steps 1:6:1
has 1 '>level_after 0.190 mg/L at every point: level'
blend='blend --volume 110L --share 10%:100%:10% --tan 2 --ph 7.4 --alkalinity 1meq/L --temp 25 --salinity 34 --new-ph 8.2
    --new-alkalinity 2.4meq/L'
print_a4 9 0 a4-blend $blend --new-temp 25 --new-salinity 34
print_a4 9 0 a4-blend-more $blend --new-temp 70F --new-salinity 35
# Small notes where they would not fit otherwise; letters beside their numbers where rows are many.
print_a4 7 0 a4-full $reading --ph 7.8:8.6:0.1 --temp 25 --full
! grep "font-size=\"7\"" "$name.svg" | grep -q "CAUTION" || fail "small cautions"
chart="$reading --ph 7.8:8.6:0.1 --temp 10:40:0.75 --only free"
print_a4 7 0 a4-rows $chart
print_a4 9 3 a4-withheld challenge --volume 75L:190L:12L --fish yes

# What no page takes is longer, and that is said.
name=a4-long
"$program" $reading --ph 7:9.2:0.05 --temp 64F:90F:0.5F --page a4 --format svg >$name.svg 2>$name.err || fail "status $?"
grep -q '^holdwater: the picture is [0-9]* mm high, more than an A4 page: name fewer' $name.err || fail "nothing said"
has $((45 * 53)) '<rect x='
checks=$((checks + 1))

# Words from outside are words.
printf 'tank,salinity,temp\n"a<b&c]]>""d",34,25\n' >tanks.csv
draw 0 escaped ammonia --tan 0.6 --ph 7.8:8.6:0.1 --tank 'a<b&c]]>"d' --tanks tanks.csv --only free
has 2 'tank a&lt;b&amp;c\]\]&gt;"d,'

echo "$checks checks passed"
