"""Molar masses against the package periodictable.

The core has the abridged weights of IUPAC, to three decimals, of chlorine and sulfur to two; what is
allowed is half of the last one for an element and twice that for the sum of several
(four times for those with three oxygens). The masses around chlorine are the package's own, rounded
to three decimals: half of the last one."""

from support.compare import Comparison, core, finish, need

periodictable = need("periodictable")

weights = {
    "N": (periodictable.N.mass, 0.0005),
    "H": (periodictable.H.mass, 0.0005),
    "NH3": (periodictable.formula("NH3").mass, 0.001),
    "NH4": (periodictable.formula("NH4").mass, 0.001),
    "NH4Cl": (periodictable.formula("NH4Cl").mass, 0.01),
    "(NH4)2SO4": (periodictable.formula("(NH4)2SO4").mass, 0.01),
    "NH4OH": (periodictable.formula("NH4OH").mass, 0.001),
    "NO2": (periodictable.formula("NO2").mass, 0.0015),
    "Cu": (periodictable.Cu.mass, 0.0005),
    "CuSO4+5H2O": (periodictable.formula("CuSO4+5H2O").mass, 0.01),
    "NaHCO3": (periodictable.formula("NaHCO3").mass, 0.002),
    "Na2CO3": (periodictable.formula("Na2CO3").mass, 0.002),
    "NO3": (periodictable.formula("NO3").mass, 0.002),
    "O2": (periodictable.formula("O2").mass, 0.001),
    "CaCO3": (periodictable.formula("CaCO3").mass, 0.002),
    "Cl2": (periodictable.formula("Cl2").mass, 0.0005),
    "NaOCl": (periodictable.formula("NaOCl").mass, 0.0005),
    "Na2S2O3": (periodictable.formula("Na2S2O3").mass, 0.0005),
    "Na2S2O3(H2O)5": (periodictable.formula("Na2S2O3(H2O)5").mass, 0.0005),
    "NaHOCH2SO3": (periodictable.formula("NaHOCH2SO3").mass, 0.01),
    "NaHOCH2SO2": (periodictable.formula("NaHOCH2SO2").mass, 0.01),
    "NaHOCH2SO2(H2O)2": (periodictable.formula("NaHOCH2SO2(H2O)2").mass, 0.01),
}

comparisons = []
for name, (got,) in core("constants"):
    want, allowed = weights[name]
    comparison = Comparison("g/mol of " + name, allowed)
    comparison.add(got, want, want)
    comparisons.append(comparison)
finish(comparisons)
