"""The slope of a record and its interval against scipy's theilslopes."""

from support.compare import Comparison, core, finish, need

need("scipy")
from scipy.stats import theilslopes  # noqa: E402

slope = Comparison("slope", 1e-14)
intercept = Comparison("value at day 0", 1e-13)
low = Comparison("low end of the interval", 0)
high = Comparison("high end of the interval", 0)

for _, numbers in core("trend", 3000):
    n = int(numbers[0])
    days = numbers[1:2 * n + 1:2]
    values = numbers[2:2 * n + 1:2]
    got = numbers[2 * n + 1:]
    want = theilslopes(values, days, 0.95, method="separate")
    where = "%d readings, the first at day %r" % (n, days[0])
    slope.add(got[0], want[0], where)
    intercept.add(got[1], want[1], where)
    low.add(got[2], want[2], where)
    high.add(got[3], want[3], where)

finish([slope, intercept, low, high])
