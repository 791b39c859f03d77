# make_rows.awk - invented readings, seeded: awk -v count=N [-v shape=NAME] -f make_rows.awk
# Shapes: wide (200 columns), digits (17 in each number), quoted, bad (every other row), cr and cr-rows (ends of lines
# that are CR alone, everywhere or in all but the header), record and quotes (one record of N bytes).
# Numbers by Park and Miller, so that every awk makes the same bytes.
function random() { x = (x * 16807) % 2147483647; return x / 2147483647 }
function row(i,    text, k) {
    form = shape == "digits" ? "%.17f,%.16f,%.15f,%.15f" : "%.2f,%.2f,%.1f,%.1f"
    text = sprintf("2031-03-%02dT%02d:%02d:00,%s," form, 1 + i % 28, i % 24, i % 60, tank[1 + i % 3], \
        random() * 2, 7.6 + random() * 0.8, 22 + random() * 6, 30 + random() * 6)
    if (shape == "bad" && i % 2) sub(/,[0-9.]+,/, ",n/a,", text)
    if (shape == "wide") for (k = 7; k <= 200; k++) text = text sprintf(",%d", random() * 10000)
    if (shape == "quoted") { gsub(/,/, "\",\"", text); text = "\"" text "\"" }
    return text
}
function header(    text, k) {
    text = "when,tank,tan,ph,temp,salinity"
    if (shape == "wide") for (k = 7; k <= 200; k++) text = text ",c" k
    if (shape == "quoted") { gsub(/,/, "\",\"", text); text = "\"" text "\"" }
    return text
}
BEGIN {
    x = 20310305
    split("alder birch cedar", tank, " ")
    printf "%s%s", header(), (shape == "cr" ? "\r" : "\n")
    if (shape == "record" || shape == "quotes") {
        rest = ",birch,0.62,8.14,25.3,33.9"
        if (shape == "quotes") printf "\""
        for (i = 0; i < count / 100 - 1; i++) {
            for (k = 0; k < (shape == "quotes" ? 9 : 10); k++) printf "%s", (shape == "quotes" ? "seen \"\"it " : "seen again")
            if (shape == "quotes") printf "%s", "\"\"\"\"\"\"\"\"\"\""
        }
        print (shape == "quotes" ? "\"" : "") rest
        exit
    }
    for (i = 0; i < count; i++) printf "%s%s", row(i), (shape ~ /^cr/ ? "\r" : "\n")
}
