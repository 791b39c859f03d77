"""rows.py - the same job for python's csv module: rows.py FILE."""
import csv
import math
import sys

LN10 = math.log(10)
with open(sys.argv[1], newline="") as file:
    rows = csv.reader(file)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(next(rows) + ["free_percent", "free_mg_L"])
    for row in rows:
        temp = float(row[4])
        salinity = float(row[5])
        ionic = 19.924 * salinity / (1000 - 1.005 * salinity)
        pk = 0.09018 + 2729.92 / (temp + 273.15) + (0.1552 - 0.0003142 * temp) * ionic
        f = 1 / (1 + math.exp(LN10 * (pk - float(row[3]))))
        row.append("%.6g" % (100 * f))
        row.append("%.6g" % (f * float(row[2])))
        out.writerow(row)
