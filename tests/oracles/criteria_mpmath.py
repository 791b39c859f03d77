"""The fresh-water criteria of 2013 against 40 digits of mpmath, and the pH found back by bisection.

At the far ends of the curve a small change of the level is a large change of the pH: the pH is held
to the change that one part in 1e15 of the level makes."""

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.dps = 40
mpf = mpmath.mpf


def d(text):
    return mpf(text)


def power(x):
    return mpmath.power(10, x)


def terms(high, low, middle, ph):
    return d(high) / (1 + power(d(middle) - ph)) + d(low) / (1 + power(ph - d(middle)))


def ccc(ph, t):
    return (d("0.8876") * terms("0.0278", "1.1994", "7.688", ph)
            * d("2.126") * power(d("0.028") * (20 - max(t, mpf(7)))))


def cmc_absent(ph, t):
    g = terms("0.0114", "1.6181", "7.204", ph)
    return d("0.7249") * g * min(d("51.93"), d("23.12") * power(d("0.036") * (20 - t)))


def cmc_present(ph, t):
    g = terms("0.0114", "1.6181", "7.204", ph)
    return min(terms("0.275", "39.0", "7.204", ph),
               d("0.7249") * g * d("23.12") * power(d("0.036") * (20 - t)))


def ph_by_bisection(level, t):
    low, high = mpf(3), mpf(12)
    for _ in range(110):
        middle = (low + high) / 2
        if ccc(middle, t) > level:
            low = middle
        else:
            high = middle
    return (low + high) / 2


criteria = {"ccc": ccc, "cmc-present": cmc_present, "cmc-absent": cmc_absent}
comparisons = {name: Comparison(name, 1e-12, relative=True) for name in criteria}
back = Comparison("pH of a chronic level, in parts", 1)

for name, values in core("criteria", 6000):
    if name in criteria:
        ph, t, got = values
        comparisons[name].add(mpf(got), criteria[name](mpf(ph), mpf(t)), (ph, t))
    else:
        level, t, got = (mpf(value) for value in values)
        want = ph_by_bisection(level, t)
        step = mpf("1e-6")
        slope = abs((ccc(want + step, t) - ccc(want - step, t)) / (2 * step))
        allowed = mpf("1e-15") * want + mpf("1e-15") * level / slope
        back.add((got - want) / allowed, 0, (float(level), float(t)))

finish([*comparisons.values(), back])
