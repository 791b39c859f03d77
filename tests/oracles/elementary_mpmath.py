"""The project's own exponentials and logarithms against mpmath, in units in the last place."""

import math

from support.compare import Comparison, core, finish, need

mpmath = need("mpmath")
mpmath.mp.prec = 170
mpf = mpmath.mpf

functions = {
    "exp10": (lambda x: mpmath.power(10, x), 1.35),
    "exp10-far": (lambda x: mpmath.power(10, x), 1.35),
    "exp": (mpmath.exp, 1.0),
    "exp-far": (mpmath.exp, 1.0),
    "log": (mpmath.log, 0.95),
    "log10": (mpmath.log10, 0.9),
}
comparisons = {name: Comparison(name + ", units in the last place", allowed)
               for name, (_, allowed) in functions.items()}

for name, (x, got) in core("elementary", 100000):
    want = functions[name][0](mpf(x))
    if want == 0:
        comparisons[name].add(got, 0, x)
    else:
        unit = math.ulp(abs(float(want)))
        comparisons[name].add((mpf(got) - want) / unit, 0, x)

finish(comparisons.values())
