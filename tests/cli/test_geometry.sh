#!/bin/sh
# Where things lie in pictures, reckoned again from the numbers of csv: ticks at their values, points and turns on the
# scales that the ticks tell, numbers in the middle of their cells, shades by the number, words within the edges.
# Usage: test_geometry.sh BUILD
set -eu
. tests/scratch.sh
program=$build/holdwater
cd "$scratch"
checks=0

fail() {
    echo "$name: $*" >&2
    exit 1
}

# make NAME WORD...: NAME.svg, on a page when $page is set, and what csv prints of the same question.
page=
make() {
    name=$1
    shift
    # shellcheck disable=SC2086
    "$program" "$@" $page --format svg >"$name.svg" 2>/dev/null || true
    "$program" "$@" --format csv 2>/dev/null | awk -F, 'NR == 1 { n = NF } NF == n' >"$name.csv" || true
    [ -s "$name.csv" ] || fail "no csv"
}

# One element a line, with its attributes by name.
reading='
    function value(name,  found) {
        if (!match($0, " " name "=\"[^\"]*\"")) return ""
        found = substr($0, RSTART + length(name) + 3, RLENGTH - length(name) - 4)
        return found ~ /^-?[0-9.]+$/ ? found + 0 : found
    }
    function words(  said) { said = $0; gsub(/<[^>]*>/, "", said); return said }
    function near(a, b, room) { return a - b <= room && b - a <= room }
    function wrong(what) { print what; bad++ }
    function is_text() { return /^<text/ }
    function kind() {
        if (/^<line/ && /stroke="#ccc"/) return "grid"
        if (/^<line/ && /dasharray/) return "dashed"
        if (/^<line/ && /width="2.8"/) return "heavy"
        if (/^<line/ && /width="5"/) return "bar"
        return /^<line/ ? "axis" : ""
    }
'

# panels RESULT... : each plot of the picture at hand shows the column RESULT of its csv over the column AXIS.
panels() {
    axis=$1
    shift
    awk -v axis="$axis" -v results="$*" "$reading"'
    BEGIN { forget(); panel = rows = 0 }
    function column(title,  i) { for (i = 1; i <= titles; i++) if (head[i] == title) return i; return 0 }
    # the value at a place, by the two outermost ticks
    function across(x) { return xv[1] + (x - xp[1]) / (xp[nx] - xp[1]) * (xv[nx] - xv[1]) }
    function place_x(v) { return xp[1] + (v - xv[1]) / (xv[nx] - xv[1]) * (xp[nx] - xp[1]) }
    function place_y(v) { return yp[1] + (v - yv[1]) / (yv[ny] - yv[1]) * (yp[ny] - yp[1]) }
    # ticks at a constant step of 1, 2 or 5 and noughts, each at its value
    function ticks(v, p, n,  i, step, digits) {
        if (n < 2) { wrong("one tick"); return }
        step = v[2] - v[1]
        digits = sprintf("%.3e", step)
        if (digits !~ /^[125]\.000e/) wrong("a step of " digits)
        for (i = 2; i <= n; i++) {
            if (!near(v[i] - v[i - 1], step, step / 1000)) wrong("no tick between " v[i - 1] " and " v[i])
            if (!near((p[i] - p[1]) * (v[n] - v[1]), (v[i] - v[1]) * (p[n] - p[1]), 0.11 * (v[n] - v[1]))) wrong("tick " v[i] " at " p[i])
            if (!near(v[i] / step, int(v[i] / step + (v[i] < 0 ? -0.5 : 0.5)), 0.001)) wrong("tick " v[i] " of step " step)
        }
    }
    function judge(  i, c, xs, k, n, parts, at, low, high, from, to, t, dashed) {
        panel++
        split(results, parts, " ")
        c = column(parts[panel]); xs = column(axis)
        if (!c || !xs) { wrong("no column " parts[panel] " or " axis); return }
        ticks(xv, xp, nx); ticks(yv, yp, ny)
        if (ny < 3 || ny > 8 || nx < 2 || nx > 11) wrong(nx " and " ny " ticks")
        # the grid spans the scale, and the axes lie at its left and its foot
        if (!near(axis_x, left, 0.01) || !near(axis_y, yp[1], 0.01) || !near(axis_top, yp[ny], 0.01)) wrong("axes at " axis_x " " axis_y)
        if (!near(axis_right, right, 0.01) || !near(tick_foot, yp[1], 0.01)) wrong("axis to " axis_right)
        if (!near(place_x(cell[1, xs] < cell[rows, xs] ? cell[1, xs] : cell[rows, xs]), left, 0.2)) wrong("the axis begins elsewhere than the sweep")
        if (!near(place_x(cell[1, xs] < cell[rows, xs] ? cell[rows, xs] : cell[1, xs]), right, 0.2)) wrong("the axis ends elsewhere than the sweep")
        # the curve, the dots
        n = split(curve, at, /[ ,]/)
        k = 0
        for (i = 1; i <= rows; i++) {
            if (cell[i, c] == "") continue
            if (!near(at[2 * k + 1], place_x(cell[i, xs]), 0.2) || !near(at[2 * k + 2], place_y(cell[i, c]), 0.3))
                wrong("point " i " at " at[2 * k + 1] " " at[2 * k + 2] ", not " place_x(cell[i, xs]) " " place_y(cell[i, c]))
            if (dots && (!near(dotx[k + 1], at[2 * k + 1], 0.01) || !near(doty[k + 1], at[2 * k + 2], 0.01))) wrong("dot " k + 1)
            if (at[2 * k + 2] < yp[ny] - 0.1 || at[2 * k + 2] > yp[1] + 0.1) wrong("above or below the scale")
            k++
        }
        if (n != 2 * k) wrong(n / 2 " points, not " k)
        if (dots && dots != k) wrong(dots " dots, not " k)
        # heavy lines lie between the points where cautions change, one for each change, and reach the foot
        t = column("cautions"); n = 0
        for (i = 2; i <= rows; i++) if (cell[i, t] != cell[i - 1, t]) {
            n++
            low = place_x(cell[i - 1, xs]); high = place_x(cell[i, xs])
            if (low > high) { from = low; low = high; high = from }
            k = 0
            for (to = 1; to <= heavies; to++) if (hx[to] >= low - 0.1 && hx[to] <= high + 0.1) { k++; if (!near(hfoot[to], yp[1], 0.01) || htop[to] >= yp[ny]) wrong("a heavy line from " htop[to] " to " hfoot[to]) }
            if (k < 1) wrong("no heavy line between points " i - 1 " and " i)
        }
        if (heavies < n || (n == 0 && heavies)) wrong(heavies " heavy lines, " n " changes")
        # dashed ones go from the axis to a heavy line, at a value between those of its neighbours
        for (i = 1; i <= dasheds; i++) {
            if (!near(dfrom[i], left, 0.01)) wrong("a dashed line from " dfrom[i])
            k = 0
            for (to = 1; to <= heavies; to++) k += near(dto[i], hx[to], 0.01)
            if (!k) wrong("a dashed line to " dto[i])
            k = 0
            for (to = 2; to <= rows; to++) {
                if (cell[to, c] == "" || cell[to - 1, c] == "" || cell[to, t] == cell[to - 1, t]) continue
                low = place_y(cell[to - 1, c]); high = place_y(cell[to, c])
                if (low > high) { from = low; low = high; high = from }
                k += dy[i] >= low - 0.2 && dy[i] <= high + 0.2
            }
            if (!k) wrong("a dashed line at " dy[i])
        }
        if (dasheds < n && !gaps) wrong(dasheds " dashed lines, " n " changes")
        # a bar lies above the plot, beside its letter, and ends at a heavy line or just outside the points
        for (i = 1; i <= bars; i++) {
            if (by[i] > yp[ny] || by[i] < yp[ny] - 100) wrong("a bar at " by[i])
            k = 0
            for (to = 1; to <= heavies; to++) k += near(bfrom[i], hx[to], 0.01)
            if (!k && !near(bfrom[i], place_x(cell[1, xs]) + (place_x(cell[1, xs]) > left + 5 ? 2.5 : -2.5), 0.2)) wrong("a bar from " bfrom[i])
            k = 0
            for (to = 1; to <= heavies; to++) k += near(bto[i], hx[to], 0.01)
            if (!k && !near(bto[i], place_x(cell[rows, xs]) + (place_x(cell[rows, xs]) > left + 5 ? 2.5 : -2.5), 0.2)) wrong("a bar to " bto[i])
        }
        forget()
    }
    function forget() { nx = ny = dots = heavies = dasheds = bars = 0; curve = ""; pending = ""; framed = 0 }
    FILENAME ~ /csv$/ {
        n = split($0, part, ",")
        if (FNR == 1) { titles = n; for (i = 1; i <= n; i++) { head[i] = part[i]; sub(/_(mg_L|L|mL|g|degC|g_kg|pct)$/, "", head[i]) } }
        else { rows++; for (i = 1; i <= n; i++) cell[rows, i] = part[i] }
        next
    }
    kind() == "grid" && curve != "" { judge() }
    kind() == "grid" && !framed { left = value("x1"); right = value("x2") }
    kind() == "grid" { pending = "y"; at_y = value("y1"); next }
    kind() == "axis" && value("x1") == value("x2") && near(value("y2") - value("y1"), 4, 0.11) { pending = "x"; at_x = value("x1"); tick_foot = value("y1"); next }
    kind() == "axis" && value("y1") == value("y2") { axis_y = value("y1"); axis_right = value("x2"); next }
    kind() == "axis" && value("x1") == value("x2") { axis_x = value("x1"); axis_top = value("y2"); framed = 1; next }
    is_text() && pending == "y" {
        if (value("text-anchor") != "end" || !near(value("x"), left - 5, 0.11) || !near(value("y") - at_y, 0.35 * value("font-size"), 0.11)) wrong("label " words() " at " value("x") " " value("y"))
        ny++; yv[ny] = words() + 0; yp[ny] = at_y; pending = ""; next
    }
    is_text() && pending == "x" {
        if (value("text-anchor") != "middle" || !near(value("x"), at_x, 0.01) || !near(value("y") - tick_foot, 6 + value("font-size"), 0.11)) wrong("label " words() " at " value("x") " " value("y"))
        nx++; xv[nx] = words() + 0; xp[nx] = at_x; pending = ""; next
    }
    { pending = "" }
    kind() == "bar" { bars++; bfrom[bars] = value("x1"); bto[bars] = value("x2"); by[bars] = value("y1"); if (value("y1") != value("y2")) wrong("a slanting bar"); if (!near(value("y1"), letter_y, 0.11)) wrong("a bar beside its letter") }
    kind() == "heavy" { heavies++; hx[heavies] = value("x1"); htop[heavies] = value("y1") + 0; hfoot[heavies] = value("y2"); if (value("x1") != value("x2")) wrong("a slanting line") }
    kind() == "dashed" { dasheds++; dfrom[dasheds] = value("x1"); dto[dasheds] = value("x2"); dy[dasheds] = value("y1"); if (value("y1") != value("y2")) wrong("a slanting line") }
    is_text() && value("text-anchor") == "end" && /bold/ { letter_y = value("y") - 0.35 * value("font-size"); if (!near(value("x"), axis_x - 5, 0.11)) wrong("letter at " value("x")) }
    /^<polyline/ && /stroke="#000"/ { curve = curve (curve == "" ? "" : " ") value("points") }
    /^<circle/ { dots++; dotx[dots] = value("cx"); doty[dots] = value("cy"); if (value("r") != (phone ? 3 : value("r")) || value("r") > 3.6) wrong("a dot of " value("r")) }
    /viewBox="0 0 400 / { phone = 1 }
    is_text() && framed && curve != "" && value("text-anchor") != "end" { judge() }
    END {
        if (framed && curve != "") judge()
        if (panel != split(results, part, " ")) wrong(panel " plots")
    }' gaps="${gaps:-}" "$name.csv" "$name.svg" >wrong.txt
    [ ! -s wrong.txt ] || fail "$(head -n 4 wrong.txt)"
    edges
    checks=$((checks + 12))
}

# edges: no words and no line of the picture at hand beyond its margin of 10; a letter is half its size wide at least.
edges() {
    awk "$reading"'
    NR == 1 { split(value("viewBox"), box, " "); next }
    /^<text/ {
        size = value("font-size"); wide = length(words()) * size / 2; x = value("x") + 0
        if (value("text-anchor") == "middle") x -= wide / 2; else if (value("text-anchor") == "end") x -= wide
        if (x < 9.9 || x + wide > box[3] - 9.9 || value("y") - size < 0 || value("y") + 0 > box[4] - 9.9) wrong("words at the edge: " words())
    }
    /^<(line|rect x)/ { x = value("x1") != "" ? value("x2") : value("x") + value("width"); if (x > box[3] - 9.9 || x < 9.9) wrong("a line at the edge: " $0) }
    ' "$name.svg" >wrong.txt
    [ ! -s wrong.txt ] || fail "$(head -n 4 wrong.txt)"
}

# cells COLUMNS RESULT: boxes in rows of COLUMNS, edge to edge; in each the number of csv in its middle; its shade by the
# number, from white at the least (255) by 85 levels; the values of the axes above and beside.
cells() {
    awk -v columns="$1" -v result="$2" -v beside="${3:-0}" "$reading"'
    BEGIN { n_boxes = answers = 0 }
    FILENAME ~ /csv$/ {
        n = split($0, part, ",")
        if (FNR == 1) { for (i = 1; i <= n; i++) if (part[i] ~ "^" result "(_|$)") c = i; next }
        if (part[c] != "") { if (low == "" || part[c] + 0 < low) low = part[c] + 0; if (high == "" || part[c] + 0 > high) high = part[c] + 0 }
        want[answers++] = part[c]
        next
    }
    /^<rect x=/ && value("height") > 15 {
        x[n_boxes] = value("x") + 0; y[n_boxes] = value("y") + 0; w = value("width") + 0; h = value("height") + 0
        if (n_boxes && (w != wide || h != high_box)) wrong("boxes of several sizes")
        wide = w; high_box = h
        shade[n_boxes] = value("fill"); n_boxes++; number_next = 1; next
    }
    is_text() && number_next {
        k = n_boxes - 1; size = value("font-size")
        said[k] = words(); number_next = 0; at_x = value("x"); foot = value("y"); anchor = value("text-anchor"); letters_next = 1
        if (!beside && (anchor != "middle" || !near(at_x, x[k] + wide / 2, 0.11))) wrong("number " said[k] " aside at " at_x)
        if (foot > y[k] + high_box - 0.1 * size || foot - 0.7 * size < y[k]) wrong("number " said[k] " outside")
        plain[k] = foot; next
    }
    is_text() && letters_next && /bold/ && value("text-anchor") != "end" && value("y") < y[n_boxes - 1] + high_box {
        k = n_boxes - 1
        if (beside) { if (!near(value("y"), plain[k], 0.01) || value("x") - at_x != 3 || value("text-anchor") != "" || anchor != "end") wrong("letters beside " said[k]) }
        else if (!near((value("y") + plain[k]) / 2, y[k] + high_box / 2 + 0.35 * size, 0.11) || !near(value("y") - plain[k], 1.1 * size, 0.11) || !near(value("x"), at_x, 0.01)) wrong("letters of " said[k])
        marked[k] = 1; letters_next = 0; next
    }
    is_text() && /bold/ && value("text-anchor") == "middle" { heads++; head_x[heads] = value("x"); head_y[heads] = value("y") }
    is_text() && /bold/ && value("text-anchor") == "end" { sides++; side_x[sides] = value("x"); side_y[sides] = value("y"); side_size = value("font-size"); letters_next = 0 }
    END {
        if (n_boxes != answers) wrong(n_boxes " boxes, " answers " answers")
        if (heads != columns || sides * columns != n_boxes) wrong(heads " heads, " sides " sides")
        for (k = 0; k < n_boxes; k++) {
            r = int(k / columns); i = k % columns
            if (!near(x[k], x[0] + i * wide, 0.06 * (i + 1)) || !near(y[k], y[0] + r * high_box, 0.06 * (r + 1))) wrong("box " k " at " x[k] " " y[k])
            if (!near(head_x[i + 1], x[k] + wide / 2, 0.16)) wrong("head " i)
            if (!near(side_y[r + 1], y[k] + high_box / 2 + 0.35 * side_size, 0.16) || !near(side_x[r + 1], x[0] - 5, 0.16)) wrong("side " r)
            if (!near(said[k] + 0, want[k] + 0, 0.006 * (want[k] < 0 ? -want[k] : want[k]))) wrong("number " said[k] ", not " want[k])
            if (!marked[k] && !near(plain[k], y[k] + high_box / 2 + 0.35 * side_size, 0.16)) wrong("number " said[k] " not in the middle")
            level = 255 - 85 * (high > low ? (want[k] - low) / (high - low) : 0)
            hex = "0123456789abcdef"
            got = 16 * (index(hex, substr(shade[k], 2, 1)) - 1) + index(hex, substr(shade[k], 3, 1)) - 1
            if (!near(got, level, 0.51)) wrong("shade " got ", not " level)
        }
        if (head_y[1] + 4 != y[0] && !near(head_y[1] + 4, y[0], 0.11)) wrong("heads at " head_y[1])
    }' "$name.csv" "$name.svg" >wrong.txt
    [ ! -s wrong.txt ] || fail "$(head -n 4 wrong.txt)"
    edges
    checks=$((checks + 9))
}

water='ammonia --tan 0.6 --salinity 34'
make line $water --ph 7.8:8.6:0.1 --temp 25 --only free,long_ratio
panels ph free long_ratio
make downwards $water --ph 8.6:7.8:-0.1 --temp 25 --only free,long_ratio
panels ph free long_ratio
make many ammonia --tan 0:20:0.05 --ph 8.1 --temp 25 --salinity 30 --only free,long_ratio
panels tan free long_ratio
make below bath --volume 12L --strength 1%wv --target 6mg/L --temp 28C:22C:-1C --source-temp 25C --only temp_gap
panels temp temp_gap
make deep challenge --volume 75L:190L:12L --fish no --only mass
panels volume mass
make oxygen oxygen --temp 5:35:2.5 --salinity 34 --only saturation
panels temp saturation

make grid $water --ph 7.8:8.2:0.1 --temp 22:28:1 --only free
cells 5 free
make plain oxygen --temp 10:30:5 --salinity 30:36:2 --only saturation
cells 5 saturation

page='--page a4'
make paper $water --ph 7.8:8.6:0.1 --temp 25 --only free,long_ratio
panels ph free long_ratio
make beside $water --ph 7.4:8.6:0.1 --temp 25 --only free,long_ratio,short_ratio,tan_long,free_percent
panels ph free long_ratio short_ratio tan_long free_percent
make wall $water --ph 7.8:8.6:0.1 --temp 22:28:1 --only free
cells 9 free

# record NAME WORD...: a record's picture. Readings, line, levels and the way to the limit, reckoned from what csv tells.
record() {
    name=$1
    shift
    "$program" trend --rows record.csv --tank birch --of tan --when 2031-03-07T20:00 "$@" --format svg >"$name.svg" 2>/dev/null
    "$program" trend --rows record.csv --tank birch --of tan --when 2031-03-07T20:00 "$@" --format csv >"$name.csv" 2>/dev/null
    awk "$reading"'
    BEGIN { n = dots = nx = ny = slanting = rect = 0 }
    function place_y(v) { return yp[1] + (v - yv[1]) / (yv[ny] - yv[1]) * (yp[ny] - yp[1]) }
    function place_x(v) { return xp[1] + (v - xv[1]) / (xv[nx] - xv[1]) * (xp[nx] - xp[1]) }
    FILENAME ~ /record.csv$/ { if (FNR > 1) { split($0, part, ","); n++; day[n] = substr(part[1], 9, 2) - 1 + substr(part[1], 12, 2) / 24; tan[n] = part[3] } next }
    FILENAME ~ /csv$/ { m = split($0, part, ","); for (i = 1; i <= m; i++) if (FNR == 1) head[i] = part[i]; else told[head[i]] = part[i]; next }
    kind() == "grid" { pending = "y"; left = value("x1"); right = value("x2"); at_y = value("y1"); next }
    kind() == "axis" && value("x1") == value("x2") && near(value("y2") - value("y1"), 4, 0.11) { pending = "x"; at_x = value("x1"); next }
    is_text() && pending == "y" { ny++; yv[ny] = words() + 0; yp[ny] = at_y; pending = ""; next }
    is_text() && pending == "x" { nx++; xv[nx] = words() + 0; xp[nx] = at_x; pending = ""; next }
    /^<circle/ { dots++; if (value("cy") > yp[1] + 0.1 || value("cy") < yp[ny] - 0.1) wrong("reading " dots " outside")
        if (!near(value("cx"), place_x(day[dots]), 0.3) || !near(value("cy"), place_y(tan[dots]), 0.3)) wrong("reading " dots " at " value("cx") " " value("cy")) }
    /^<polyline/ && /stroke="#000"/ { split(value("points"), at, /[ ,]/) }
    kind() == "heavy" { line_y["limit"] = value("y1"); if (value("x1") != left || value("x2") != right || value("y1") != value("y2")) wrong("limit from " value("x1")) }
    kind() == "dashed" { dashed_y = value("y1"); if (value("y1") != value("y2")) { slanting++; fx = value("x1"); fy = value("y1"); tx = value("x2"); ty = value("y2") } else if (value("x1") != left || value("x2") != right) wrong("a level from " value("x1")) }
    is_text() && /font-size="12"/ && words() ~ /^(limit|floor|ceiling) / {
        split(words(), part, " ")
        y = part[1] == "limit" ? line_y["limit"] : dashed_y; seen[part[1]] = 1; level[part[1]] = y
        if (!near(y, place_y(part[2]), 0.2)) wrong(part[1] " at " y)
        # the name touches its line neither from above nor from below
        over = y - value("y")
        if (!near(over, 4, 0.11) && !near(over, -12, 0.11)) wrong(part[1] " named " over " over its line")
        if (near(over, 4, 0.11) && y - 12 < yp[ny] && part[1] == "limit") wrong("limit named above the plot")
        if (near(over, -12, 0.11) && y + 12 > yp[1]) wrong(part[1] " named below the plot")
        if (part[1] == "limit" ? !near(value("x"), left + 4, 0.01) || value("text-anchor") != "" : !near(value("x"), right - 3, 0.01) || value("text-anchor") != "end") wrong(part[1] " named at " value("x"))
    }
    /^<rect x=/ { rect = 1; rx = value("x"); ry = value("y") + 0; rw = value("width"); rh = value("height") }
    END {
        if (dots != n) wrong(dots " dots, not " n)
        if (!near(left, place_x(day[1]), 0.3)) wrong("day " day[1] " is not at the left")
        first = place_x(day[1]); last = place_x(day[n])
        if (!near(at[1], first, 0.3) || !near(at[3], last, 0.3)) wrong("line from " at[1] " to " at[3])
        slope = ((yv[1] + (at[4] - yp[1]) / (yp[ny] - yp[1]) * (yv[ny] - yv[1])) - (yv[1] + (at[2] - yp[1]) / (yp[ny] - yp[1]) * (yv[ny] - yv[1]))) / (day[n] - day[1])
        if (!near(slope, told["slope_mg_L_d"], 0.002)) wrong("slope " slope)
        ahead = told["days_to_limit_d"]
        if ((ahead != "") != (slanting == 1)) wrong(slanting + 0 " ways to the limit")
        if (ahead != "" && (!near(fx, at[3], 0.01) || !near(fy, at[4], 0.01) || !near(tx, place_x(day[n] + ahead), 2) || !near(ty, level["limit"], 0.01))) wrong("the way to the limit")
        if (!near(right, ahead == "" ? last : place_x(day[n] + ahead), 2)) wrong("right edge at " right)
        if (rect != (seen["floor"] || seen["ceiling"])) wrong("window")
        if (rect && (!near(ry, seen["ceiling"] ? level["ceiling"] : yp[ny], 0.11) || !near(ry + rh, seen["floor"] ? level["floor"] : yp[1], 0.16) || rx != left || !near(rx + rw, right, 0.11))) wrong("window at " ry " " rh)
        if (yp[1] - yp[ny] != 220 && !near(yp[1] - yp[ny], 220, 0.11)) wrong("height")
    }' record.csv "$name.csv" "$name.svg" >wrong.txt
    [ ! -s wrong.txt ] || fail "$(head -n 4 wrong.txt)"
    edges
    checks=$((checks + 12))
}

{
    echo 'when,tank,tan mg/L'
    for day in 1 2 3 4 5 6 7; do
        echo "2031-03-0${day}T08:00,birch,0.$((day + 1))$((day % 3))"
    done
} >record.csv
record all --limit 1.2 --floor 0.25 --ceiling 1.15
record limit --limit 1.5
record floor --floor 0.7
record ceiling --ceiling 0.3
record none
record far --limit 0.25
# a floor with no room below its name
record low --floor 0.01

# all far from 0: the scale ends below the least of what is drawn
awk -F, -v OFS=, 'NR > 1 { $3 = 2 - $3 / 2 } 1' record.csv >high.csv
mv high.csv record.csv
record high
record high-floor --floor 1.48
record high-ceiling --ceiling 2.23

echo "$checks checks passed"
