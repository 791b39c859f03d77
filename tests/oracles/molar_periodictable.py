"""Molar masses against the package periodictable.

The core has the abridged weights of IUPAC, to three decimals; what is allowed is half of the last
one for an element and twice that for the sum of several."""

from support.compare import Comparison, core, finish, need

periodictable = need("periodictable")

weights = {
    "N": (periodictable.N.mass, 0.0005),
    "H": (periodictable.H.mass, 0.0005),
    "NH3": (periodictable.formula("NH3").mass, 0.001),
    "NH4": (periodictable.formula("NH4").mass, 0.001),
}

comparisons = []
for name, (got,) in core("constants"):
    want, allowed = weights[name]
    comparison = Comparison("g/mol of " + name, allowed)
    comparison.add(got, want, want)
    comparisons.append(comparison)
finish(comparisons)
