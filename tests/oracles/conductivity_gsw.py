"""Practical salinity and conductivity against the package gsw, which has the same scale and the same
extension to low salinity.

gsw finds the factor of the extension and its conductivities by a fixed number of Newton steps, the
core by closing a bracket to the last bit; what is allowed, 1e-9, is the accuracy of those steps, and
far below what any instrument resolves. Where gsw has no salinity (below 0, in the dip of the equation
near zero conductivity) there is nothing to compare. Where the core has none, the salinity is to be
above 45, where its range ends."""

from math import isnan

from support.compare import Comparison, core, finish, need

gsw = need("gsw")

refused = Comparison("refused: salinity up to 45", 1e-12)
salinity = Comparison("salinity from conductivity", 1e-9)
conductivity = Comparison("conductivity from salinity, mS/cm", 1e-9)

for name, (t, given, got) in core("conductivity", 20000):
    if name == "salinity":
        want = float(gsw.SP_from_C(given, t, 0))
        if isnan(got):
            refused.add(min(want, 45), 45, (given, t))
        elif not isnan(want):
            salinity.add(got, want, (given, t))
    elif given > 0.001:
        conductivity.add(got, float(gsw.C_from_SP(given, t, 0)), (given, t))

finish([salinity, refused, conductivity])
