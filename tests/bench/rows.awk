# rows.awk - the same job for awk: free_percent and free of every row, 6 significant digits.
BEGIN { FS = OFS = ","; LN10 = log(10) }
NR == 1 { print $0, "free_mg_L", "free_percent"; next }
{
    kelvin = $5 + 273.15
    ionic = 19.924 * $6 / (1000 - 1.005 * $6)
    pk = 0.09018 + 2729.92 / kelvin + (0.1552 - 0.0003142 * $5) * ionic
    f = 1 / (1 + exp(LN10 * (pk - $4)))
    printf "%s,%.6g,%.6g\n", $0, f * $3, 100 * f
}
