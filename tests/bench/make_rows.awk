# make_rows.awk - invented readings, seeded: awk -v count=N -f make_rows.awk
BEGIN {
    srand(20310305)
    split("alder birch cedar", tank, " ")
    print "when,tank,tan,ph,temp,salinity"
    for (i = 0; i < count; i++) {
        printf "2031-03-%02dT%02d:%02d:00,%s,%.2f,%.2f,%.1f,%.1f\n", 1 + i % 28, i % 24, i % 60, \
            tank[1 + i % 3], rand() * 2, 7.6 + rand() * 0.8, 22 + rand() * 6, 30 + rand() * 6
    }
}
