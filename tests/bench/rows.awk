# rows.awk - the same job for awk: free_percent and free of every row, 6 significant digits.
# -v cut=TEXT: what separates, if not a comma; -v end=TEXT: what ends a record, if not a line feed.
BEGIN { FS = cut == "" ? "," : cut; OFS = ","; if (end != "") RS = end; LN10 = log(10) }
NR == 1 { print $0, "free_percent", "free_mg_L"; next }
{
    kelvin = $5 + 273.15
    ionic = 19.924 * $6 / (1000 - 1.005 * $6)
    pk = 0.09018 + 2729.92 / kelvin + (0.1552 - 0.0003142 * $5) * ionic
    f = 1 / (1 + exp(LN10 * (pk - $4)))
    printf "%s,%.6g,%.6g\n", $0, 100 * f, f * $3
}
