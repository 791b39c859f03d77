"""Salinity from density and from refractive index, solved again with 50 digits by mpmath.

The core solves EOS-80 for salinity by false position; here a step of Newton at high precision tells how far
that is from the root (the error of the step is the square of it), from coefficients written anew. A density of 1000 kg/m3 has a last bit of 1.1e-13, which is
1.5e-13 in salinity; the formula rounds a few times on the way: 1e-12 is allowed. An index has a last
bit of 2.2e-16, 1.2e-12 in salinity: 5e-12 is allowed."""

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.dps = 50
f = mpmath.mpf

PURE = [f(c) for c in ("999.842594", "6.793952e-2", "-9.095290e-3", "1.001685e-4",
                       "-1.120083e-6", "6.536332e-9")]
FIRST = [f(c) for c in ("8.24493e-1", "-4.0899e-3", "7.6438e-5", "-8.2467e-7", "5.3875e-9")]
HALF = [f(c) for c in ("-5.72466e-3", "1.0227e-4", "-1.6546e-6")]
SECOND = f("4.8314e-4")
WAVE = f("589.3")


def polynomial(coefficients, x):
    return sum(c * x**i for i, c in enumerate(coefficients))


def density(s, t):
    t68 = f("1.00024") * t
    return (polynomial(PURE, t68) + polynomial(FIRST, t68) * s
            + polynomial(HALF, t68) * mpmath.sqrt(s)**3 + SECOND * s**2)


def slope(s, t):
    t68 = f("1.00024") * t
    return (polynomial(FIRST, t68) + polynomial(HALF, t68) * mpmath.sqrt(s) * 3 / 2
            + 2 * SECOND * s)


def index(s, t):
    return (f("1.31405") + (f("1.779e-4") - f("1.05e-6") * t + f("1.6e-8") * t**2) * s
            - f("2.02e-6") * t**2 + (f("15.868") + f("0.01155") * s - f("0.00423") * t) / WAVE
            - 4382 / WAVE**2 + f("1.1455e6") / WAVE**3)


from_density = Comparison("salinity from density", 1e-12)
of_index = Comparison("refractive index", 1e-15)
from_index = Comparison("salinity from index", 5e-12)
refused = Comparison("refused: salinity at the end, 45", 1e-12)

for name, values in core("instruments", 1500):
    t = f(values[0])
    if name == "from-density":
        _, rho, got = values
        want = f(got) - (density(f(got), t) - f(rho)) / slope(f(got), t)
        from_density.add(f(got), want, (rho, t))
    else:
        _, s, n, got = values
        of_index.add(f(n), index(f(s), t), (s, t))
        if got != got:  # rounding brought the end of the range beyond it
            refused.add(s, 45, (n, t))
            continue
        from_index.add(f(got), (f(n) - index(f(0), t)) / (index(f(1), t) - index(f(0), t)), (n, t))

finish([from_density, of_index, from_index] + ([refused] if refused.points else []))
