"""Density of sea water against the equation of state of 1980 in 40 digits of mpmath."""

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.dps = 40
mpf = mpmath.mpf

# UNESCO 44, equations 13 and 14, by rising powers of the temperature on IPTS-68.
PURE = "999.842594 6.793952e-2 -9.095290e-3 1.001685e-4 -1.120083e-6 6.536332e-9"
FIRST = "8.24493e-1 -4.0899e-3 7.6438e-5 -8.2467e-7 5.3875e-9"
THREE_HALVES = "-5.72466e-3 1.0227e-4 -1.6546e-6"
SECOND = "4.8314e-4"


def polynomial(coefficients, t):
    return sum(mpf(c) * t ** n for n, c in enumerate(coefficients.split()))


def density(s, t90):
    t = mpf("1.00024") * t90
    return (polynomial(PURE, t) + polynomial(FIRST, t) * s
            + polynomial(THREE_HALVES, t) * s ** mpf("1.5") + polynomial(SECOND, t) * s ** 2)


comparison = Comparison("density, EOS-80", 1e-12, relative=True)
for _, (s, t, got) in core("density", 20000):
    comparison.add(mpf(got), density(mpf(s), mpf(t)), (s, t))
finish([comparison])
