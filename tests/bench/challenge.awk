# challenge.awk - `challenge --fish no` of a volume in US gallons for awk.
BEGIN { N = 14.007; T = 2 }
NR == 1 {
    print $0 ",mass_g,reading_n_mg_L,reading_nh3_mg_L,reading_nh4_mg_L,nitrate_mg_L,nitrogen_mg,alkalinity_used_mgCaCO3_L,oxygen_used_mg_L"
    next
}
{
    nitrogen = $1 * 3.785411784 * T
    printf "%s,%.6g,%.6g,%.6g,%.6g,%.6g,%.6g,%.6g,%.6g\n", $0, nitrogen * 53.489 / N / 1000, T, T * 17.031 / N, \
        T * 18.039 / N, T * 62.004 / N, nitrogen, T * 100.086 / N, T * 2 * 31.998 / N
}
