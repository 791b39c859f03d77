"""Density of sea water against TEOS-10, by the package gsw.

Two equations of state, so what is allowed is their difference: 0.009 kg/m3 for salinity 0 to 42 and
0 to 40 degrees, 0.016 up to salinity 45, where EOS-80 is outside its fit, and 0.02 from -2 to 0
degrees. The exact Gibbs function is asked, not the polynomial of 75 terms."""

from support.compare import Comparison, core, finish, need

gsw = need("gsw")

fitted = Comparison("density, fitted range", 0.009)
salty = Comparison("density, salinity 42 to 45", 0.016)
cold = Comparison("density, -2 to 0 degrees", 0.02)

for _, (s, t, got) in core("density", 20000):
    if s > 42 and t < 0:
        continue  # outside both
    reference_salinity = s * 35.16504 / 35
    want = float(gsw.rho_t_exact(reference_salinity, t, 0))
    where = cold if t < 0 else fitted if s <= 42 else salty
    where.add(got, want, (s, t))

finish([fitted, salty, cold])
